// Held by tests/browser/everyScreen.spec.ts.
import type uPlot from 'uplot'
import { readOverlayInk } from './overlayInk.ts'
import type { DrawnMedian } from './overlayMedian.ts'
import { createOverlayPicture, type OverlayInk, type OverlayPicture, type OverlayView } from './overlayPicture.ts'
import type { DrawnCurve } from './overlayView.ts'

/** What is drawn: curves, their median, and which of them stands out. */
export type OverlayContent = {
  curves: readonly DrawnCurve[]
  median: DrawnMedian | null
  emphasis: number | null
}

export type OverlayPainter = {
  /** Paints the content for a view unless that is what was painted last, and puts it on the plot. */
  draw(plot: uPlot, content: OverlayContent, view: OverlayView): OverlayPicture
  /** The key of the painted curve nearest to a point, in pixels of the page, no farther away than `reach`; null for none. */
  nearest(left: number, top: number, reach: number): number | null
  /** The content has changed. */
  forget(): void
  /** The colours have changed too. */
  forgetInk(): void
}

/** Keeps the picture of the curves on a canvas of its own, so that what has not changed is not painted again. */
export function createOverlayPainter(host: HTMLElement): OverlayPainter {
  const canvas = document.createElement('canvas')
  const surface = canvas.getContext('2d')!
  let ink: OverlayInk = readOverlayInk(host, devicePixelRatio)
  let picture: OverlayPicture | null = null
  let paintedView: OverlayView | null = null
  let paintedEmphasis: number | null = null

  function sized(columns: number, rows: number): OverlayPicture {
    if (picture !== null && picture.pixels.columns === columns && picture.pixels.rows === rows) return picture
    canvas.width = columns
    canvas.height = rows
    ink = readOverlayInk(host, devicePixelRatio)
    paintedView = null
    picture = createOverlayPicture(columns, rows)
    return picture
  }

  return {
    draw({ ctx, bbox }, { curves, median, emphasis }, view) {
      const [columns, rows] = [Math.round(bbox.width), Math.round(bbox.height)]
      const painting = sized(columns, rows)
      const stays = paintedView !== null && sameView(paintedView, view)
      if (!stays || paintedEmphasis !== emphasis) {
        if (!stays) painting.paint(curves, median, view, ink)
        painting.emphasise(emphasis, ink)
        const bytes = new Uint8ClampedArray(painting.pixels.words.buffer as ArrayBuffer)
        surface.putImageData(new ImageData(bytes, columns, rows), 0, 0)
        paintedView = view
        paintedEmphasis = emphasis
      }
      ctx.drawImage(canvas, bbox.left, bbox.top)
      return painting
    },
    nearest(left, top, reach) {
      const ratio = devicePixelRatio
      return picture?.nearest(Math.round(left * ratio), Math.round(top * ratio), reach * ratio) ?? null
    },
    forget() {
      paintedView = null
    },
    forgetInk() {
      ink = readOverlayInk(host, devicePixelRatio)
      paintedView = null
    },
  }
}

function sameView(one: OverlayView, other: OverlayView): boolean {
  return (
    one.span.fromS === other.span.fromS &&
    one.span.toS === other.span.toS &&
    one.bottom === other.bottom &&
    one.top === other.top &&
    one.factor === other.factor
  )
}
