import type { ForceCurve } from '#contract/breaks/curve.ts'
import { isWhole, type PlotView } from '../viewKeys.ts'
import { type Span, valueRange } from '../zoom.ts'

/** From the first sample to the last; about a lone one. */
export function spanOf(timeS: Float64Array): Span {
  const fromS = timeS[0]!
  const toS = timeS[timeS.length - 1]!
  return toS > fromS ? { fromS, toS } : { fromS: fromS - 0.5, toS: fromS + 0.5 }
}

/** The shortest stretch worth looking at, s: eight of the curve's own samples. */
export function leastSpanS(whole: Span, samples: number): number {
  return samples > 1 ? Math.max((whole.toS - whole.fromS) / samples, 1e-6) * 8 : 1e-3
}

/** Forces as shown, and the range of values that the samples in view need. */
export function shownForces(
  { timeS, force }: Pick<ForceCurve, 'timeS' | 'force'>,
  factor: number,
  { span, whole }: Pick<PlotView, 'span' | 'whole'>,
): { force: Float64Array; range: { min: number; max: number } } {
  const shown = Float64Array.from(force, (value) => value * factor)
  let highest = Number.NEGATIVE_INFINITY
  let lowest = Number.POSITIVE_INFINITY
  for (let i = 0; i < shown.length; i++) {
    if (timeS[i]! < span.fromS || timeS[i]! > span.toS) continue
    lowest = Math.min(lowest, shown[i]!)
    highest = Math.max(highest, shown[i]!)
  }
  return { force: shown, range: valueRange(lowest, highest, isWhole({ span, whole })) }
}
