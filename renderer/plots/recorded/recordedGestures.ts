// Held by tests/browser/breaks/curveMouse.spec.ts.
import type uPlot from 'uplot'
import { isWhole, type PlotView } from '../viewKeys.ts'
import { pan, type Span, zoom } from '../zoom.ts'

export type GestureTarget = {
  view(): Omit<PlotView, 'cursorS'>
  show(span: Span): void
}

/** How much one notch of a wheel zooms; the browsers count a notch as 100 or so pixels. */
const zoomPerPixel = 1.0016

/**
 * The wheel zooms about the pointer; with Shift, or turned sideways, it moves along the curve. Zooming out of the whole curve
 * is left to the page, so that it still scrolls. Returns what ends it.
 */
export function listenToWheel(plot: uPlot, target: GestureTarget): () => void {
  const turned = (event: WheelEvent) => {
    // While the page is being scrolled the browser no longer asks
    if (event.ctrlKey || !event.cancelable) return
    const pixels = (delta: number) => delta * (event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 33 : 1)
    const { span, whole, leastS } = target.view()
    const sideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)
    if (isWhole({ span, whole }) && (sideways || event.deltaY > 0)) return
    event.preventDefault()
    if (sideways) {
      const along = pixels(Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.deltaY)
      target.show(pan(span, along / Math.max(plot.over.clientWidth, 1), whole))
      return
    }
    const atS = plot.posToVal(event.clientX - plot.over.getBoundingClientRect().left, 'x')
    target.show(zoom(span, zoomPerPixel ** pixels(event.deltaY), atS, whole, leastS))
  }
  plot.over.addEventListener('wheel', turned, { passive: false })
  return () => plot.over.removeEventListener('wheel', turned)
}

/** Wheel and dragging together. Returns what ends both. */
export function listenToGestures(plot: uPlot, target: GestureTarget): () => void {
  const ends = [listenToWheel(plot, target), listenToDragging(plot, target)]
  return () => {
    for (const end of ends) end()
  }
}

/** A pointer that moved by more pixels than this between press and release drew something and did not click. */
const stillPx = 4

/** Tells where the plot was clicked, pixels from its left, unless something was drawn or moved along. Returns what ends it. */
export function listenToClicks(plot: uPlot, onClick: (leftPx: number) => void): () => void {
  let pressed: { x: number; y: number } | null = null
  const onPress = (event: MouseEvent) => {
    pressed = event.button === 0 && !movesAlong(event) ? { x: event.clientX, y: event.clientY } : null
  }
  const onRelease = (event: MouseEvent) => {
    const from = pressed
    pressed = null
    if (from === null || Math.hypot(event.clientX - from.x, event.clientY - from.y) > stillPx) return
    onClick(event.clientX - plot.over.getBoundingClientRect().left)
  }
  plot.over.addEventListener('mousedown', onPress)
  plot.over.addEventListener('mouseup', onRelease)
  return () => {
    plot.over.removeEventListener('mousedown', onPress)
    plot.over.removeEventListener('mouseup', onRelease)
  }
}

/** Whether a press of a button begins to drag the curve along, and not to draw a stretch. */
export function movesAlong(event: MouseEvent): boolean {
  return event.button === 1 || (event.button === 0 && event.shiftKey)
}

/** Shift and drag, or the middle button, moves along the curve. Returns what ends it. */
function listenToDragging(plot: uPlot, target: GestureTarget): () => void {
  const pressed = (event: MouseEvent) => {
    if (movesAlong(event)) dragAlong(plot, event, target)
  }
  plot.over.addEventListener('mousedown', pressed)
  return () => plot.over.removeEventListener('mousedown', pressed)
}

/** Drags the curve along under the pointer until the button is let go. */
function dragAlong(plot: uPlot, start: MouseEvent, target: GestureTarget): void {
  start.preventDefault()
  const from = target.view().span
  const moved = (event: MouseEvent) => {
    const share = (start.clientX - event.clientX) / Math.max(plot.over.clientWidth, 1)
    target.show(pan(from, share, target.view().whole))
  }
  const ended = () => {
    document.removeEventListener('mousemove', moved)
    document.removeEventListener('mouseup', ended)
    plot.over.style.cursor = ''
  }
  plot.over.style.cursor = 'grabbing'
  document.addEventListener('mousemove', moved)
  document.addEventListener('mouseup', ended)
}
