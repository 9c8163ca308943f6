/** A stretch of the time axis, s. */
export type Span = { fromS: number; toS: number }

/** Moves a span by a share of its own length, kept within `whole`. */
export function pan(span: Span, share: number, whole: Span): Span {
  const length = span.toS - span.fromS
  const fromS = Math.min(Math.max(span.fromS + share * length, whole.fromS), whole.toS - length)
  return { fromS, toS: fromS + length }
}

/** Scales a span by `factor` about `centreS`, no wider than `whole` and no narrower than `leastS`. */
export function zoom(span: Span, factor: number, centreS: number, whole: Span, leastS: number): Span {
  const length = span.toS - span.fromS
  const wanted = Math.min(Math.max(length * factor, leastS), whole.toS - whole.fromS)
  const share = length > 0 ? (centreS - span.fromS) / length : 0.5
  const fromS = Math.min(Math.max(centreS - share * wanted, whole.fromS), whole.toS - wanted)
  return { fromS, toS: fromS + wanted }
}

/** Puts a span that was drawn by hand in order, within `whole`, and no narrower than `leastS`. */
export function drawnSpan(oneS: number, otherS: number, whole: Span, leastS: number): Span {
  const fromS = Math.max(Math.min(oneS, otherS), whole.fromS)
  const toS = Math.min(Math.max(oneS, otherS), whole.toS)
  return toS - fromS >= leastS
    ? { fromS, toS }
    : zoom({ fromS, toS: Math.max(toS, fromS + 1e-9) }, 1, fromS, whole, leastS)
}

/** A stretch with room on both sides, so that what led to it and what came of it are in sight; within `whole`, no narrower than `leastS`. */
export function spanAbout(stretch: Span, whole: Span, leastS: number): Span {
  const room = Math.max(0.6 * (stretch.toS - stretch.fromS), 0.03 * (whole.toS - whole.fromS))
  return drawnSpan(stretch.fromS - room, stretch.toS + room, whole, leastS)
}

/** Lowest and highest value of an axis for values from `lowest` to `highest`: from zero for a whole curve, closely about them when zoomed in. */
export function valueRange(lowest: number, highest: number, isWhole: boolean): { min: number; max: number } {
  if (!(lowest <= highest)) return { min: 0, max: 1 }
  const base = isWhole ? Math.min(lowest, 0) : lowest
  const top = isWhole ? Math.max(highest, 0) : highest
  const room = 0.1 * (top - base || Math.abs(top) || 1)
  return { min: base - (isWhole ? 0.4 : 1) * room, max: top + (isWhole ? 1 : 1.6) * room }
}
