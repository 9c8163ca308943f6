import { householderLeastSquares } from '../../numbers/householder.ts'
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
 * Maximum likelihood of a line and its spread with right-censored values, by expectation and maximisation: each held value is put
 * where it would be expected above what was seen, and the line fitted again. `rows`: what the parameters are multiplied with.
 *
 * Null where the spread vanishes or the search finds no end.
 * Source: Schmee and Hahn, Technometrics 21 (1979) 417, with the maximum likelihood variance of Aitkin, Technometrics 23 (1981) 161
 * (from memory). Checked: tests/domain/findings/ageing/censoredLine.spec.ts against R survreg(dist = "gaussian").
 */
export function censoredLine(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  held: readonly boolean[],
  start: { parameters: readonly number[]; sigma: number },
): CensoredLine | null {
  if (held.every((one) => one)) return null
  const columns = rows[0]!.map((_, k) => Float64Array.from(rows, (row) => row[k]!))
  const expected = Float64Array.from(values)
  let { parameters, sigma } = start
  for (let round = 0; round < 20_000; round++) {
    let missing = 0
    const means = rows.map((row) => row.reduce((sum, factor, k) => sum + factor * parameters[k]!, 0))
    values.forEach((value, i) => {
      if (!held[i]) return
      const z = (value - means[i]!) / sigma
      const hazard = -survival(z)[1]
      expected[i] = means[i]! + sigma * hazard
      missing += 1 + z * hazard - hazard * hazard
    })
    const next = householderLeastSquares(columns, expected).solution
    const squares = rows.reduce((sum, row, i) => {
      const mean = row.reduce((all, factor, k) => all + factor * next[k]!, 0)
      return sum + (expected[i]! - mean) ** 2
    }, 0)
    const nextSigma = Math.sqrt((squares + missing * sigma * sigma) / values.length)
    if (!(nextSigma > 1e-9 * start.sigma) || !Number.isFinite(nextSigma)) return null
    const moved = Math.max(
      Math.abs(nextSigma - sigma) / nextSigma,
      ...rows.map(
        (row, i) => Math.abs(row.reduce((sum, factor, k) => sum + factor * next[k]!, 0) - means[i]!) / nextSigma,
      ),
    )
    parameters = next
    sigma = nextSigma
    if (moved < 1e-12) return lineAt(rows, values, held, parameters, sigma)
  }
  return null
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
    const z = (value - rows[i]!.reduce((sum, factor, k) => sum + factor * parameters[k]!, 0)) / sigma
    const [log, first, second] = held[i] ? survival(z) : density(z)
    logLikelihood += held[i] ? log : log - Math.log(sigma)
    return { inMean: -second, both: -(second * z + first), inLogSigma: -(second * z * z + first * z) }
  })
  return { parameters, sigma, logLikelihood, curvatures }
}
