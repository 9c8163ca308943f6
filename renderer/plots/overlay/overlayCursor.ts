// Held by tests/browser/breaks/compareRun.spec.ts.
import type uPlot from 'uplot'
import { centreOf, type PlotView } from '../viewKeys.ts'
import type { OverlayCurve, OverlayMedian } from './overlayCurve.ts'
import { type OverlayReading, readingAt } from './overlayReading.ts'

/** The cursor over many curves: where it stands on the time axis, and what is read there. */
export type OverlayCursor = {
  at(): number | null
  /** Takes the place where the plot has put it, and tells what is read and pointed at there. */
  report(): void
  /** Tells again what is read where it stands. */
  read(): void
  /** Acts on a key that moves it; true when it was one of these. */
  key(name: string, view: PlotView): boolean
}

/** The cursor of a plot. `read` names the curve that stands out and the median; `nearest` the curve at a place in pixels. */
export function createOverlayCursor(
  plot: uPlot,
  ground: {
    read(): { curve: OverlayCurve | null; median: OverlayMedian | null }
    nearest(left: number, top: number): number | null
    onCursor(reading: OverlayReading | null): void
    onPoint(key: number | null): void
  },
): OverlayCursor {
  let at: number | null = null

  function read(): void {
    if (at === null) return
    const { curve, median } = ground.read()
    ground.onCursor(readingAt(curve, median, at))
  }

  function put(to: number, { fromS, toS }: PlotView['span']): void {
    const there = Math.min(Math.max(to, fromS), toS)
    // Above the plot, so that the pointer's curve is not taken for the one under the cursor.
    plot.setCursor({ left: plot.valToPos(there, 'x'), top: -1 }, true)
  }

  return {
    at: () => at,
    report() {
      const { left, top } = plot.cursor
      if (left == null || left < 0) {
        at = null
        ground.onCursor(null)
        return
      }
      at = plot.posToVal(left, 'x')
      if (top != null && top >= 0) ground.onPoint(ground.nearest(left, top))
      read()
    },
    read,
    key(name, view) {
      const { span, cursorS } = view
      const centre = centreOf(view)
      // A cursor out of sight comes to the middle first
      const step = centre === cursorS ? (span.toS - span.fromS) / 200 : 0
      const places: Record<string, number> = {
        ArrowLeft: centre - step,
        ArrowRight: centre + step,
        Home: span.fromS,
        End: span.toS,
      }
      const to = places[name]
      if (to !== undefined) put(to, span)
      return to !== undefined
    },
  }
}
