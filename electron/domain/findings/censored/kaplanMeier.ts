import type { CensoredStrengths } from './censoredFit.ts'

/** At each strength at which a bond failed, rising. */
export type Survival = {
  readonly strengthMPa: number[]
  readonly survival: number[]
  /** Greenwood; null where nothing survives. */
  readonly standardError: (number | null)[]
  readonly atRisk: number[]
}

/**
 * Share of bonds that hold more than each strength, without any distribution.
 *
 *   S = Π (1 − d/n)      SE = S √Σ d/(n(n − d))      n: all blocks at least as strong; wood at the same strength still counts
 *
 * Source: NIST/SEMATECH e-Handbook 8.2.1.5. Checked: tests/domain/findings/censored/kaplanMeier.spec.ts against its example.
 */
export function kaplanMeier({ failed, censored }: CensoredStrengths): Survival {
  const failures = failed.toSorted((one, other) => one - other)
  const all = [...failed, ...censored].sort((one, other) => one - other)
  const found: Survival = { strengthMPa: [], survival: [], standardError: [], atRisk: [] }
  let survival = 1
  let sum = 0
  let weaker = 0
  for (let at = 0; at < failures.length; ) {
    const strength = failures[at]!
    let deaths = 0
    for (; at < failures.length && failures[at] === strength; at++) deaths += 1
    while (all[weaker]! < strength) weaker += 1
    const atRisk = all.length - weaker
    survival *= 1 - deaths / atRisk
    sum += deaths / (atRisk * (atRisk - deaths))
    found.strengthMPa.push(strength)
    found.survival.push(survival)
    found.standardError.push(survival > 0 ? survival * Math.sqrt(sum) : null)
    found.atRisk.push(atRisk)
  }
  return found
}
