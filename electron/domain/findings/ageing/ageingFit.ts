import { minimumBetween } from '../../numbers/goldenMinimum.ts'
import { dot } from '../../numbers/matrices/dot.ts'
import { householderLeastSquares } from '../../numbers/matrices/householder.ts'
import { positiveInverse } from '../../numbers/matrices/positiveInverse.ts'
import { type AgeingModelName, ageingModelNames, designRow, gradientRow, parameterNames } from './ageingModels.ts'
import { type CensoredLine, censoredLine } from './censoredLine.ts'

/** A block in an ageing series: `held` where its wood failed and its bond is only known to have held so much. */
export type AgeingBlock = { readonly ageMonths: number; readonly strengthMPa: number; readonly held: boolean }

/** Why a model was not fitted. */
export type AgeingFailure = 'few-ages' | 'few-blocks' | 'no-spread' | 'no-curvature' | 'no-maximum'

export type AgeingFit = {
  readonly model: AgeingModelName
  readonly parameters: readonly number[]
  readonly standardErrors: readonly number[]
  /** Covariance of the parameters, MPa² and so on. */
  readonly covariance: readonly (readonly number[])[]
  readonly sigmaMPa: number
  readonly degreesOfFreedom: number
  readonly aicc: number | null
}

const logTwoPi = Math.log(2 * Math.PI)
/** Time constants are sought from this share of the shortest time between ages to this multiple of the whole. */
const tauRange = { shortest: 0.1, longest: 20 }

/**
 * One model of ageing fitted to single blocks by maximum likelihood with normal errors, or why it was not.
 *
 *   SE from s² (JᵀJ)⁻¹, s² = RSS/(n − p); with held blocks from the observed information and σ̂² n/(n − p)
 *   AICc = −2 ln L + 2K + 2K(K + 1)/(n − K − 1), K = p + 1, σ in ln L the maximum likelihood one
 *
 * Source: Burnham and Anderson, Model Selection and Multimodel Inference, 2002, 2.4 (from memory); Seber and Wild, Nonlinear
 * Regression, 1989, 2.1. Checked: tests/domain/findings/ageing/ageingFit.spec.ts against R lm, nls and survreg.
 */
export function fitAgeing(model: AgeingModelName, blocks: readonly AgeingBlock[]): AgeingFit | AgeingFailure {
  const ages = [...new Set(blocks.map(({ ageMonths }) => ageMonths))].sort((one, other) => one - other)
  const p = parameterNames[model].length
  if (ages.length < (p === 3 ? 4 : p)) return 'few-ages'
  if (blocks.length < p + 1) return 'few-blocks'
  const fitWith = (tau: number) =>
    fitLine(
      blocks,
      blocks.map(({ ageMonths }) => designRow(model, ageMonths, tau)),
    )
  if (model !== 'exponential-approach') {
    const line = fitWith(Number.NaN)
    return typeof line === 'string' ? line : composed(model, line.parameters, line, blocks)
  }
  const tau = bestTau(ages, (candidate) => {
    const line = fitWith(candidate)
    return typeof line === 'string' ? Number.POSITIVE_INFINITY : -line.logLikelihood
  })
  if (tau === null) return 'no-curvature'
  const line = fitWith(tau)
  return typeof line === 'string' ? line : composed(model, [...line.parameters, tau], line, blocks)
}

type Line = { parameters: readonly number[]; logLikelihood: number; sigma: number; censored: CensoredLine | null }

/** A line in given columns, by least squares or, with held blocks, by maximum likelihood. */
function fitLine(blocks: readonly AgeingBlock[], rows: readonly number[][]): Line | AgeingFailure {
  const columns = rows[0]!.map((_, k) => Float64Array.from(rows, (row) => row[k]!))
  const y = blocks.map(({ strengthMPa }) => strengthMPa)
  let parameters: readonly number[]
  try {
    parameters = householderLeastSquares(columns, y).solution
  } catch {
    return 'few-ages'
  }
  const squares = y.reduce((sum, value, i) => sum + (value - dot(rows[i]!, parameters)) ** 2, 0)
  const n = y.length
  const largest = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  if (!(squares > n * (1e-12 * largest) ** 2)) return 'no-spread'
  const sigma = Math.sqrt(squares / n)
  if (!blocks.some(({ held }) => held))
    return { parameters, sigma, logLikelihood: (-n / 2) * (logTwoPi + 2 * Math.log(sigma) + 1), censored: null }
  const censored = censoredLine(
    rows,
    y,
    blocks.map(({ held }) => held),
    { parameters, sigma },
  )
  return censored === null ? 'no-maximum' : { ...censored, censored }
}

/** The time constant with the least loss, months; null where the best is no valley: the data show no curve. */
function bestTau(ages: readonly number[], loss: (tau: number) => number): number | null {
  const shortest = Math.min(...ages.slice(1).map((age, i) => age - ages[i]!)) * tauRange.shortest
  const longest = (ages.at(-1)! - ages[0]!) * tauRange.longest
  const steps = 60
  const at = (i: number) => Math.log(shortest) + (i / steps) * Math.log(longest / shortest)
  const losses = Array.from({ length: steps + 1 }, (_, i) => loss(Math.exp(at(i))))
  const best = losses.indexOf(Math.min(...losses))
  if (best <= 0 || best >= steps || !Number.isFinite(losses[best]!)) return null
  return Math.exp(minimumBetween((x) => loss(Math.exp(x)), at(best - 1), at(best + 1), 1e-9))
}

function composed(
  model: AgeingModelName,
  parameters: readonly number[],
  line: Line,
  blocks: readonly AgeingBlock[],
): AgeingFit | AgeingFailure {
  const n = blocks.length
  const p = parameters.length
  const sigmaMPa = line.sigma * Math.sqrt(n / (n - p))
  const gradients = blocks.map(({ ageMonths }) => gradientRow(model, ageMonths, parameters))
  const inverse = line.censored === null ? inverseOfSquares(gradients) : inverseOfInformation(gradients, line.censored)
  if (inverse === null) return 'no-curvature'
  const covariance = inverse.map((row) => row.map((value) => sigmaMPa * sigmaMPa * value))
  const k = p + 1
  return {
    model,
    parameters,
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i]!)),
    covariance,
    sigmaMPa,
    degreesOfFreedom: n - p,
    aicc: n - k - 1 > 0 ? -2 * line.logLikelihood + 2 * k + (2 * k * (k + 1)) / (n - k - 1) : null,
  }
}

/** (JᵀJ)⁻¹ by orthogonal reduction, which keeps the digits that JᵀJ would lose. */
function inverseOfSquares(gradients: readonly (readonly number[])[]): number[][] | null {
  const columns = gradients[0]!.map((_, k) => Float64Array.from(gradients, (row) => row[k]!))
  try {
    const { inverseR } = householderLeastSquares(columns, new Float64Array(gradients.length))
    return inverseR.map((row) => inverseR.map((other) => dot(row, other)))
  } catch {
    return null
  }
}

/** The part for the parameters of the inverse of the observed information in them and ln σ, in units of σ². */
function inverseOfInformation(
  gradients: readonly (readonly number[])[],
  { curvatures, sigma }: CensoredLine,
): number[][] | null {
  const p = gradients[0]!.length
  const information = Array.from({ length: p + 1 }, () => new Array<number>(p + 1).fill(0))
  gradients.forEach((row, i) => {
    const { inMean, both, inLogSigma } = curvatures[i]!
    const all = [...row, sigma]
    for (let j = 0; j <= p; j++)
      for (let k = 0; k <= p; k++) {
        const curvature = j < p && k < p ? inMean : j === p && k === p ? inLogSigma : both
        information[j]![k]! += all[j]! * all[k]! * curvature
      }
  })
  return (
    positiveInverse(information)
      ?.slice(0, p)
      .map((row) => row.slice(0, p)) ?? null
  )
}

/** A model as it was fitted or why it was not, and its weight beside the others; null: it has no AICc. */
type TriedModel = {
  readonly model: AgeingModelName
  readonly fit: AgeingFit | AgeingFailure
  readonly weight: number | null
}
export type WeightedFit = { readonly fit: AgeingFit; readonly weight: number }

/**
 * All five models, and the weight of each that has an AICc: exp(−Δ/2), of sum 1.
 * Checked: tests/domain/findings/ageing/ageingFit.spec.ts.
 */
export function fitAllAgeing(blocks: readonly AgeingBlock[]): TriedModel[] {
  const fits = ageingModelNames.map((model) => ({ model, fit: fitAgeing(model, blocks) }))
  const criteria = fits.map(({ fit }) => (typeof fit === 'string' ? null : fit.aicc))
  const least = Math.min(...criteria.filter((aicc) => aicc !== null))
  const relative = criteria.map((aicc) => (aicc === null ? null : Math.exp((least - aicc) / 2)))
  const all = relative.reduce<number>((sum, value) => sum + (value ?? 0), 0)
  return fits.map((one, i) => ({ ...one, weight: relative[i] === null ? null : relative[i]! / all }))
}

/** Those of them that were fitted and have a weight. Checked: tests/domain/findings/ageing/ageingFit.spec.ts. */
export function weightedFits(tried: readonly TriedModel[]): WeightedFit[] {
  return tried.flatMap(({ fit, weight }) => (typeof fit === 'string' || weight === null ? [] : [{ fit, weight }]))
}
