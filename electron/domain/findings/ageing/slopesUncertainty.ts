/** How sure slopes and their common one are, in units of the variance of single blocks. */
export type SlopesUncertainty = {
  /** Variance of the common slope, and the degrees of freedom of Student's t that go with it. */
  readonly ofCommon: number
  readonly commonDf: number
  /** Mean square error of each slope as it is drawn, never larger than the variance of the slope alone. */
  readonly ofSeries: readonly number[]
}

/**
 * Errors of slopes that share a spread, with what is not known of the two variances themselves: for few series that is most of it.
 *
 *   wᵢ = Sxxᵢ/(1 + λSxxᵢ)   T(a, b) = Σw²ab − 2Σw³ab/Σw + Σw²a Σw²b/(Σw)²   dᵢ = 1/Sxxᵢ
 *   information about (σ², τ²), σ = 1: ½ [ρ + T(d, d), T(d, 1); T(d, 1), T(1, 1)], its inverse C; ρ degrees of freedom about the lines
 *   var β = 1/Σw, ν = 2 (var β)²/gᵀCg, g its derivatives (Satterthwaite)
 *   mse bᵢ = λs + s²/Σw + 2 hᵀCh/wᵢ, s = 1/(1 + λSxxᵢ) and h its derivatives (Prasad and Rao)
 *
 * `xx`: Sxx of each series, all above 0; `spareDf`: ρ, above 0; `ratio`: λ = τ²/σ².
 * Source: Satterthwaite, Biometrics Bulletin 2 (1946) 110; Prasad and Rao, Journal of the American Statistical Association 85 (1990)
 * 163 (from memory). Checked: tests/domain/findings/ageing/slopesUncertainty.spec.ts against R pbkrtest, and by coverage.
 */
export function slopesUncertainty(xx: readonly number[], spareDf: number, ratio: number): SlopesUncertainty {
  const w = xx.map((s) => s / (1 + ratio * s))
  const sum = (term: (w: number, d: number) => number) => w.reduce((all, one, i) => all + term(one, 1 / xx[i]!), 0)
  const whole = sum((one) => one)
  const [squares, withD] = [sum((one) => one ** 2), sum((one, d) => one ** 2 * d)]
  const half = (a: number, b: number, second: (d: number) => number) =>
    (sum((one, d) => one ** 2 * second(d)) -
      (2 * sum((one, d) => one ** 3 * second(d))) / whole +
      (a * b) / whole ** 2) /
    2
  const ofBlock = spareDf / 2 + half(withD, withD, (d) => d * d)
  const ofBoth = half(withD, squares, (d) => d)
  const ofSpread = half(squares, squares, () => 1)
  const determinant = ofBlock * ofSpread - ofBoth * ofBoth
  /** Variance of a quantity with these derivatives by the variance of blocks and that of slopes. */
  const spreadOf = (byBlock: number, bySpread: number) =>
    (byBlock ** 2 * ofSpread - 2 * byBlock * bySpread * ofBoth + bySpread ** 2 * ofBlock) / determinant
  const ofCommon = 1 / whole
  return {
    ofCommon,
    commonDf: (2 * ofCommon ** 2) / spreadOf(withD / whole ** 2, squares / whole ** 2),
    ofSeries: w.map((one, i) => {
      const d = 1 / xx[i]!
      const shrinkage = d * one
      const unsure = spreadOf(ratio * d * one ** 2, -d * one ** 2) / one
      return Math.min(ratio * shrinkage + shrinkage ** 2 * ofCommon + 2 * unsure, d)
    }),
  }
}
