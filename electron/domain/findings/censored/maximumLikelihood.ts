import type { LocationScale } from './locationScale.ts'

/** Strengths on the scale of the distribution (MPa or ln MPa): where a bond failed, and where the wood did before the bond. */
export type CensoredValues = { readonly failed: readonly number[]; readonly censored: readonly number[] }

/** Location and log of the scale where the likelihood is largest, with the observed information there. */
export type Estimate = {
  readonly mu: number
  readonly logSigma: number
  readonly logLikelihood: number
  /** Covariance of (μ, ln σ), from the second derivatives. */
  readonly covariance: { readonly mu: number; readonly logSigma: number; readonly both: number }
}

/** Log likelihood on the scale of the values. Checked: through tests/domain/findings/censored/maximumLikelihood.spec.ts. */
export function logLikelihoodAt(
  { failed, censored }: CensoredValues,
  model: LocationScale,
  mu: number,
  logSigma: number,
): number {
  const sigma = Math.exp(logSigma)
  let sum = -failed.length * logSigma
  for (const y of failed) sum += model.density((y - mu) / sigma)[0]
  for (const y of censored) sum += model.survival((y - mu) / sigma)[0]
  return sum
}

/** Gradient and second derivatives in (μ, ln σ). */
function derivatives({ failed, censored }: CensoredValues, model: LocationScale, mu: number, logSigma: number) {
  const sigma = Math.exp(logSigma)
  let gMu = 0
  let gLog = -failed.length
  let hMu = 0
  let hBoth = 0
  let hLog = 0
  const add = (y: number, curve: LocationScale['density']) => {
    const z = (y - mu) / sigma
    const [, first, second] = curve(z)
    gMu -= first / sigma
    gLog -= first * z
    hMu += second / (sigma * sigma)
    hBoth += (second * z + first) / sigma
    hLog += second * z * z + first * z
  }
  for (const y of failed) add(y, model.density)
  for (const y of censored) add(y, model.survival)
  return { gMu, gLog, hMu, hBoth, hLog }
}

/** Why a fit has no maximum, or null: a scale of 0 makes the likelihood endless. */
export function noMaximum({ failed, censored }: CensoredValues): 'no-failure' | 'no-spread' | null {
  if (failed.length === 0) return 'no-failure'
  const first = failed[0]!
  const spread = failed.some((y) => y !== first) || censored.some((y) => y > first)
  return spread ? null : 'no-spread'
}

/** A step of so many σ is in reach of Newton's own convergence: the likelihood no longer tells it from the next. */
const closeBy = 1e-4
const settledAt = 1e-9

/** The largest share of a step, by halves, that makes the likelihood no smaller; 0: none does. */
function noWorse(value: number, after: (share: number) => number): number {
  for (let share = 1; share > 1e-12; share /= 2) if (after(share) >= value) return share
  return 0
}

/**
 * Maximum likelihood of location and scale with right-censored values, by Newton in (μ, ln σ) with halving steps.
 *
 *   ln L = Σ_failed [ln f(z) − ln σ] + Σ_censored ln S(z),  z = (y − μ)/σ
 *
 * Null where it is not found in 500 steps, or values are too far apart for their squares. Throws RangeError where there is none (noMaximum says why).
 * Source: Meeker and Escobar (1998), chapter 8 (from memory). Checked: tests/domain/findings/censored/maximumLikelihood.spec.ts
 * against R survreg.
 */
export function maximumLikelihood(values: CensoredValues, model: LocationScale): Estimate | null {
  if (noMaximum(values) !== null) throw new RangeError('maximumLikelihood requires values with a maximum')
  const all = [...values.failed, ...values.censored]
  const mean = all.reduce((sum, y) => sum + y, 0) / all.length
  const sd = Math.sqrt(all.reduce((sum, y) => sum + (y - mean) ** 2, 0) / all.length)
  let mu = mean
  let logSigma = Math.log(sd)
  let value = logLikelihoodAt(values, model, mu, logSigma)
  for (let round = 0; round < 500; round++) {
    const { gMu, gLog, hMu, hBoth, hLog } = derivatives(values, model, mu, logSigma)
    const sigma = Math.exp(logSigma)
    const step = newtonStep({ gMu: gMu * sigma, gLog, hMu: hMu * sigma * sigma, hBoth: hBoth * sigma, hLog })
    if (step === null) return null
    const size = Math.max(Math.abs(step.mu), Math.abs(step.logSigma))
    const at = (share: number): [number, number] => [mu + share * step.mu * sigma, logSigma + share * step.logSigma]
    const shorter = size < closeBy ? 1 : noWorse(value, (share) => logLikelihoodAt(values, model, ...at(share)))
    if (shorter === 0) return null
    ;[mu, logSigma] = at(shorter)
    if (size < settledAt) return estimateAt(values, model, mu, logSigma)
    value = logLikelihoodAt(values, model, mu, logSigma)
  }
  return null
}

type Slopes = { gMu: number; gLog: number; hMu: number; hBoth: number; hLog: number }

/** Newton's step, in σ and in ln σ; along the gradient made shorter where the surface is not curved downwards. Null where numbers leave their range. */
function newtonStep({ gMu, gLog, hMu, hBoth, hLog }: Slopes): { mu: number; logSigma: number } | null {
  const size = Math.max(Math.abs(hMu), Math.abs(hLog), Math.abs(hBoth), 1e-300)
  if (!Number.isFinite(size * size + gMu + gLog)) return null
  for (let more = 0; ; more = more === 0 ? 1e-3 * size : 10 * more) {
    const a = hMu - more
    const c = hLog - more
    const determinant = a * c - hBoth * hBoth
    if (!(a < 0 && determinant > 1e-14 * size * size)) continue
    const mu = -(c * gMu - hBoth * gLog) / determinant
    const logSigma = -(a * gLog - hBoth * gMu) / determinant
    const longest = Math.max(Math.abs(mu) / 3, Math.abs(logSigma), 1)
    return { mu: mu / longest, logSigma: logSigma / longest }
  }
}

function estimateAt(values: CensoredValues, model: LocationScale, mu: number, logSigma: number): Estimate {
  const { hMu, hBoth, hLog } = derivatives(values, model, mu, logSigma)
  const determinant = hMu * hLog - hBoth * hBoth
  return {
    mu,
    logSigma,
    logLikelihood: logLikelihoodAt(values, model, mu, logSigma),
    covariance: { mu: -hLog / determinant, logSigma: -hMu / determinant, both: hBoth / determinant },
  }
}
