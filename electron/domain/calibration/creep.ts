import { Trouble } from '#contract/errors.ts'
import type { CreepResult } from '#contract/records/calibration.ts'

/** The indicated force at a time after the load was put on, or taken off. */
export type HeldForce = { readonly timeS: number; readonly forceN: number }

/** Times between which creep is read, s (ISO 376, from memory). */
export const creepFromS = 30
export const creepToS = 300

function forceAt(held: readonly HeldForce[], timeS: number): number {
  const after = held.findIndex((sample) => sample.timeS >= timeS)
  const next = held[after]
  const before = held[after - 1]
  if (next !== undefined && next.timeS === timeS) return next.forceN
  if (next === undefined || before === undefined)
    throw new Trouble(
      'invalid-input',
      `The force was not watched from before ${creepFromS} s until ${creepToS} s, which creep needs.`,
      `Hold the load, or leave the cell free, for at least ${creepToS} s and measure again.`,
    )
  const share = (timeS - before.timeS) / (next.timeS - before.timeS)
  return before.forceN + share * (next.forceN - before.forceN)
}

/**
 * Creep in percent of the load: how the indicated force changes between 30 s and 300 s under a load that does not.
 *
 *   c = (F₃₀₀ − F₃₀) / F · 100      F load held, N; samples between are interpolated on a line
 *
 * Throws RangeError for a load that is not positive; Trouble when the record does not reach from 30 s to 300 s.
 * Source: ISO 376 (from memory). Checked: tests/domain/calibration/creep.spec.ts by hand.
 */
export function creepOf(held: readonly HeldForce[], loadN: number): CreepResult {
  if (!(loadN > 0)) throw new RangeError('creepOf requires a load above 0')
  const change = forceAt(held, creepToS) - forceAt(held, creepFromS)
  return { kind: 'creep', percent: (100 * change) / loadN, fromS: creepFromS, toS: creepToS }
}

/**
 * Zero return in percent of the load taken off: how the indicated force changes between 30 s and 300 s after unloading.
 *
 *   c = (F₃₀₀ − F₃₀) / F · 100      F load taken off, N
 *
 * Throws RangeError for a load that is not positive; Trouble when the record does not reach from 30 s to 300 s.
 * Source: ISO 376 (from memory). Checked: tests/domain/calibration/creep.spec.ts by hand.
 */
export function zeroReturnOf(free: readonly HeldForce[], loadBeforeN: number): CreepResult {
  return { ...creepOf(free, loadBeforeN), kind: 'zero-return' }
}
