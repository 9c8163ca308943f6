import { type ColumnSpans, createColumnSpans, fillColumnSpans } from './columnSpans.ts'
import { forceRange, type MinMaxLevels, samplesIn } from './minMaxLevels.ts'
import { curveExtent, type OverlayCurve } from './overlayCurve.ts'
import { type Dash, type Pixels, paintSpans } from './spanPainter.ts'
import type { Span } from './zoom.ts'

/** What the axes show: a stretch of the time axis, and the values at bottom and top. `factor`: from stored to shown values. */
export type OverlayView = { span: Span; bottom: number; top: number; factor: number }

type Rgb = { red: number; green: number; blue: number }
export type OverlayInk = { plain: Rgb; outlying: Rgb; setAside: Rgb; width: number; dash: Dash }

/** A stretch of a curve fetched once more; complete: none of its samples was left out. */
export type FineStretch = { levels: MinMaxLevels; complete: boolean }
export type DrawnCurve = { curve: OverlayCurve; fine: FineStretch | null }

/** The finer stretch where it reaches over all of the curve that is in view, else what was fetched of the whole curve. */
export function inView({ curve, fine }: DrawnCurve, span: Span): FineStretch {
  const whole = { levels: curve.levels, complete: curve.samples <= curve.levels.timeS.length }
  const extent = curveExtent(curve)
  if (fine === null || extent === null || fine.levels.timeS.length < 2) return whole
  const { timeS } = fine.levels
  const at = (time: number) => (time - curve.originS) / curve.timeUnit
  const from = Math.max(span.fromS, extent.from)
  const to = Math.min(span.toS, extent.to)
  return at(timeS[0]!) <= from && at(timeS[timeS.length - 1]!) >= to ? fine : whole
}

/** Lowest and highest shown value of all curves in view, 0 always between them. */
export function rangeInView(curves: readonly DrawnCurve[], span: Span, factor: number): { low: number; high: number } {
  let low = 0
  let high = 0
  for (const drawn of curves) {
    const { originS, timeUnit, forceUnit } = drawn.curve
    const { levels } = inView(drawn, span)
    const { from, to } = samplesIn(levels.timeS, span.fromS * timeUnit + originS, span.toS * timeUnit + originS)
    const range = forceRange(levels, from, to)
    if (range === null) continue
    low = Math.min(low, (range.lowest / forceUnit) * factor)
    high = Math.max(high, (range.highest / forceUnit) * factor)
  }
  return { low, high }
}

/** The curves as pixels, and where each of them lies, so that one can be pointed at. */
export type OverlayPicture = {
  readonly pixels: Pixels
  paint(curves: readonly DrawnCurve[], view: OverlayView, ink: OverlayInk): void
  /** What a curve covered when it was last painted. */
  spansOf(key: number): ColumnSpans | null
  /** The curve nearest to a point, in pixels, no farther away than `reach`; null for none. */
  nearest(column: number, row: number, reach: number): number | null
}

/** A picture of so many pixels. Painting it costs the same however many samples the curves have. */
export function createOverlayPicture(columns: number, rows: number): OverlayPicture {
  const pixels: Pixels = { words: new Uint32Array(columns * rows), columns, rows }
  const spans = new Map<number, ColumnSpans>()
  let painted: readonly DrawnCurve[] = []

  return {
    pixels,
    paint(curves, view, ink) {
      pixels.words.fill(0)
      for (const drawn of curves)
        fillColumnSpans(inView(drawn, view.span).levels, mapOf(drawn.curve, view), roomFor(drawn))
      const passes = [
        { of: plain, colour: ink.plain },
        { of: ({ setAside }: OverlayCurve) => setAside, colour: ink.setAside },
        { of: ({ setAside, outlying }: OverlayCurve) => !setAside && outlying !== null, colour: ink.outlying },
      ]
      for (const { of, colour } of passes)
        for (const { curve } of curves)
          if (of(curve))
            paintSpans(pixels, spans.get(curve.key)!, {
              ...colour,
              width: ink.width,
              dash: curve.setAside ? ink.dash : null,
            })
      painted = curves
    },
    spansOf: (key) => spans.get(key) ?? null,
    nearest(column, row, reach) {
      let best: number | null = null
      let bestDistance = reach
      for (const { curve } of painted) {
        const distance = distanceTo(spans.get(curve.key)!, column, row, Math.ceil(reach / 3))
        if (distance >= bestDistance) continue
        best = curve.key
        bestDistance = distance
      }
      return best
    },
  }

  function roomFor({ curve }: DrawnCurve): ColumnSpans {
    const made = spans.get(curve.key) ?? createColumnSpans(columns)
    spans.set(curve.key, made)
    return made
  }

  function mapOf({ originS, timeUnit, forceUnit }: OverlayCurve, { span, bottom, top, factor }: OverlayView) {
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

function plain({ setAside, outlying }: OverlayCurve): boolean {
  return !setAside && outlying === null
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
