import { dot } from '../../numbers/matrices/dot.ts'
import { positiveInverse } from '../../numbers/matrices/positiveInverse.ts'
import { locationScale } from '../censored/locationScale.ts'

/** A line with normal errors in which some values are only known to be larger than what was seen. */
export type CensoredLine = {
  readonly parameters: readonly number[]
  readonly sigma: number
  readonly logLikelihood: number
  /** Of each value's part of −ln L, in units of 1/σ²: in its mean, in its mean and σ ln σ, and in σ ln σ. */
  readonly curvatures: readonly { inMean: number; both: number; inLogSigma: number }[]
}

const { density, survival } = locationScale.normal

/**
 * Maximum likelihood of a line and its spread with right-censored values, by Newton with halving steps in γ = β/σ and h = 1/σ, in
 * which the likelihood has one hill. `rows`: what the parameters β are multiplied with.
 *
 *   z = h y − γ·x      ln L = Σ_failed [ln h + ln φ(z)] + Σ_held ln(1 − Φ(z))
 *
 * Null where no value failed, the spread vanishes, or the columns depend on each other.
 * Source: Olsen, Econometrica 46 (1978) 1211 (from memory). Checked: tests/domain/findings/ageing/censoredLine.spec.ts against R
 * survreg(dist = "gaussian").
 */
export function censoredLine(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  held: readonly boolean[],
  start: { parameters: readonly number[]; sigma: number },
): CensoredLine | null {
  if (held.every((one) => one)) return null
  // Columns of like size, values in units of the first spread about the first line: the matrices keep their digits.
  const sizes = rows[0]!.map((_, k) => rows.reduce((most, row) => Math.max(most, Math.abs(row[k]!)), 0) || 1)
  const scaled = rows.map((row) => row.map((value, k) => value / sizes[k]!))
  const away = values.map((value, i) => (value - dot(rows[i]!, start.parameters)) / start.sigma)
  const hill = climb(scaled, away, held)
  if (hill === null) return null
  const sigma = start.sigma / hill.h
  const parameters = start.parameters.map((value, k) => value + (hill.gamma[k]! / sizes[k]!) * sigma)
  return lineAt(rows, values, held, parameters, sigma)
}

type Hill = { gamma: readonly number[]; h: number }
/** A spread so much smaller than at the start is none. */
const steepest = 1e9

function climb(rows: readonly (readonly number[])[], values: readonly number[], held: readonly boolean[]): Hill | null {
  let at: Hill = { gamma: rows[0]!.map(() => 0), h: 1 }
  let value = heightAt(rows, values, held, at)
  for (let round = 0; round < 200; round++) {
    const step = newtonStep(rows, values, held, at)
    if (step === null || at.h > steepest) return null
    const size = Math.max(...step.map(Math.abs))
    let share = 1
    let next = moved(at, step, share)
    // Close to the top the height no longer tells one step from the next.
    for (; size > 1e-5 && !(next.h > 0 && heightAt(rows, values, held, next) >= value); next = moved(at, step, share)) {
      share /= 2
      if (share < 1e-12) return null
    }
    at = next
    if (size < 1e-10) return at
    value = heightAt(rows, values, held, at)
  }
  return null
}

const moved = ({ gamma, h }: Hill, step: readonly number[], share: number): Hill => ({
  gamma: gamma.map((value, k) => value + share * step[k]!),
  h: h + share * step.at(-1)!,
})

function heightAt(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  held: readonly boolean[],
  { gamma, h }: Hill,
): number {
  if (!(h > 0)) return Number.NEGATIVE_INFINITY
  return values.reduce((sum, value, i) => {
    const z = h * value - dot(rows[i]!, gamma)
    return sum + (held[i] ? survival(z)[0] : density(z)[0] + Math.log(h))
  }, 0)
}

/** The step to the top of the parabola that fits the hill here. */
function newtonStep(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  held: readonly boolean[],
  { gamma, h }: Hill,
): number[] | null {
  const size = gamma.length + 1
  const slope = new Array<number>(size).fill(0)
  const curvature = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  values.forEach((value, i) => {
    const x = rows[i]!
    const z = h * value - dot(x, gamma)
    const [, first, second] = held[i] ? survival(z) : density(z)
    const ofZ = [...x.map((factor) => -factor), value]
    for (let j = 0; j < size; j++) {
      slope[j]! += first * ofZ[j]!
      for (let k = 0; k < size; k++) curvature[j]![k]! -= second * ofZ[j]! * ofZ[k]!
    }
    if (held[i]) return
    slope[size - 1]! += 1 / h
    curvature[size - 1]![size - 1]! += 1 / (h * h)
  })
  return positiveInverse(curvature)?.map((row) => dot(row, slope)) ?? null
}

function lineAt(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  held: readonly boolean[],
  parameters: readonly number[],
  sigma: number,
): CensoredLine {
  let logLikelihood = 0
  const curvatures = values.map((value, i) => {
    const z = (value - dot(rows[i]!, parameters)) / sigma
    const [log, first, second] = held[i] ? survival(z) : density(z)
    logLikelihood += held[i] ? log : log - Math.log(sigma)
    return { inMean: -second, both: -(second * z + first), inLogSigma: -(second * z * z + first * z) }
  })
  return { parameters, sigma, logLikelihood, curvatures }
}
