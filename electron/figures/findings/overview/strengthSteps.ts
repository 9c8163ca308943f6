// Held by tests/figures/findings/overview/overviewFigure.spec.ts.
import { scaleInks } from '../../drawing/mark.ts'

/** The steps of the colour scale over a stretch of values, as wide as each other. */
export type Steps = {
  /** Where steps begin and end, one more than there are steps. */
  readonly bounds: readonly number[]
  /** Step of a value, 0 the lowest; the ends hold what lies beyond. */
  stepOf(value: number): number
}

/** Throws RangeError for a stretch that is none. */
export function stepsBetween(from: number, to: number): Steps {
  if (!(to > from)) throw new RangeError(`stepsBetween requires rising ends, not ${from} and ${to}`)
  const count = scaleInks.length
  const width = (to - from) / count
  return {
    bounds: Array.from({ length: count + 1 }, (_, i) => from + i * width),
    stepOf: (value) => Math.min(Math.max(Math.floor((value - from) / width), 0), count - 1),
  }
}
