import { type ColumnSpans, createColumnSpans, fillColumnSpans, fillWithStretches } from '../columnSpans.ts'
import { type Dash, type Pixels, paintSpans, type Rgb, tintBetween } from '../spanPainter.ts'
import type { Span } from '../zoom.ts'
import type { OverlayCurve } from './overlayCurve.ts'
import type { DrawnMedian } from './overlayMedian.ts'
import { type DrawnCurve, inView } from './overlayView.ts'

/** What the axes show: a stretch of the time axis, and the values at bottom and top. `factor`: from stored to shown values. */
export type OverlayView = { span: Span; bottom: number; top: number; factor: number }

/** Colours of the lines; `ratio`: device pixels to a pixel of the page. */
export type OverlayInk = Record<'plain' | 'outlying' | 'setAside' | 'median' | 'band' | 'emphasis' | 'ground', Rgb> & {
  ratio: number
}

const curveWidth = 1.3
const medianWidth = 2.75
const emphasisWidth = 2.4
const rimWidth = 2.6
const bandStrength = 0.16

/** The curves as pixels, and where each of them lies, so that one can be pointed at. */
export type OverlayPicture = {
  readonly pixels: Pixels
  paint(curves: readonly DrawnCurve[], median: DrawnMedian | null, view: OverlayView, ink: OverlayInk): void
  /** Lays one of the painted curves over the others; null: none. */
  emphasise(key: number | null, ink: OverlayInk): void
  /** What a curve covered when it was last painted. */
  spansOf(key: number): ColumnSpans | null
  /** The curve nearest to a point, in pixels, no farther away than `reach`; null for none. */
  nearest(column: number, row: number, reach: number): number | null
}

/** A picture of so many pixels. Painting it costs the same however many samples the curves have. */
export function createOverlayPicture(columns: number, rows: number): OverlayPicture {
  const base: Pixels = { words: new Uint32Array(columns * rows), columns, rows }
  const pixels: Pixels = { words: new Uint32Array(columns * rows), columns, rows }
  const spans = new Map<number, ColumnSpans>()
  const lines = {
    median: createColumnSpans(columns),
    lower: createColumnSpans(columns),
    upper: createColumnSpans(columns),
  }
  let painted: readonly OverlayCurve[] = []

  return {
    pixels,
    paint(curves, median, view, ink) {
      base.words.fill(0)
      painted = curves.map(({ curve }) => curve)
      for (const drawn of curves)
        fillColumnSpans(inView(drawn, view.span).levels, mapOf(drawn.curve, view), roomFor(drawn.curve))
      if (median !== null) {
        const map = mapOf({ originS: 0, timeUnit: 1, forceUnit: 1 }, view)
        for (const name of ['median', 'lower', 'upper'] as const) fillWithStretches(median[name], map, lines[name])
        tintBetween(base, lines.upper, lines.lower, ink.band, bandStrength)
      }
      for (const curve of painted) if (!curve.setAside && curve.outlying === null) stroke(curve, ink.plain, ink)
      for (const curve of painted) if (curve.setAside) stroke(curve, ink.setAside, ink)
      for (const curve of painted) if (!curve.setAside && curve.outlying !== null) stroke(curve, ink.outlying, ink)
      if (median !== null) paintMedian(ink)
    },
    emphasise(key, ink) {
      pixels.words.set(base.words)
      const curve = painted.find((one) => one.key === key)
      if (curve === undefined) return
      const { ratio } = ink
      const covered = spans.get(curve.key)!
      const dash = curve.setAside ? { on: 9 * ratio, off: 6 * ratio } : null
      paintSpans(pixels, covered, { ...ink.ground, width: (emphasisWidth + rimWidth) * ratio, dash: null })
      paintSpans(pixels, covered, { ...ink.emphasis, width: emphasisWidth * ratio, dash })
    },
    spansOf: (key) => spans.get(key) ?? null,
    nearest(column, row, reach) {
      let best: number | null = null
      let bestDistance = reach
      for (const { key } of painted) {
        const distance = distanceTo(spans.get(key)!, column, row, Math.ceil(reach / 3))
        if (distance >= bestDistance) continue
        best = key
        bestDistance = distance
      }
      return best
    },
  }

  function stroke(curve: OverlayCurve, colour: Rgb, { ratio }: OverlayInk): void {
    const dash: Dash | null = curve.setAside ? { on: 7 * ratio, off: 5 * ratio } : null
    paintSpans(base, spans.get(curve.key)!, { ...colour, width: curveWidth * ratio, dash })
  }

  function paintMedian({ median, ground, ratio }: OverlayInk): void {
    const dots: Dash = { on: 2 * ratio, off: 3 * ratio }
    for (const quartile of [lines.lower, lines.upper])
      paintSpans(base, quartile, { ...median, width: 1.5 * ratio, dash: dots })
    paintSpans(base, lines.median, { ...ground, width: (medianWidth + rimWidth) * ratio, dash: null })
    paintSpans(base, lines.median, { ...median, width: medianWidth * ratio, dash: null })
  }

  function roomFor({ key }: OverlayCurve): ColumnSpans {
    const made = spans.get(key) ?? createColumnSpans(columns)
    spans.set(key, made)
    return made
  }

  function mapOf(
    { originS, timeUnit, forceUnit }: Pick<OverlayCurve, 'originS' | 'timeUnit' | 'forceUnit'>,
    { span, bottom, top, factor }: OverlayView,
  ) {
    const rowsPerValue = rows / (top - bottom)
    return {
      originS: span.fromS * timeUnit + originS,
      xPerS: columns / ((span.toS - span.fromS) * timeUnit),
      zeroY: top * rowsPerValue,
      yPerForce: (factor / forceUnit) * rowsPerValue,
      columns,
    }
  }
}

/** How far a point lies from a curve; in the middle of what it covers a curve is a little nearer than at its edge. */
function distanceTo({ top, bottom }: ColumnSpans, column: number, row: number, across: number): number {
  let least = Number.POSITIVE_INFINITY
  const to = Math.min(column + across, top.length - 1)
  for (let c = Math.max(column - across, 0); c <= to; c++) {
    const [high, low] = [top[c]!, bottom[c]!]
    const beside = Math.max(high - row, row - low, 0)
    const offMiddle = Math.abs(row - (high + low) / 2)
    const distance = Math.hypot(beside, c - column) + 0.01 * Math.min(offMiddle, 50)
    if (distance < least) least = distance
  }
  return least
}
