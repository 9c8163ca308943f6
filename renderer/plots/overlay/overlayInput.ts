// Held by tests/browser/breaks/compareRun.spec.ts.
export type PlotInput = {
  /** `left`: pixels from the left edge of the plot. */
  zoomAbout(factor: number, left: number): void
  /** The picture follows the hand by so many pixels. */
  panBy(pixels: number): void
  showAll(): void
  click(left: number, top: number): void
  leave(): void
}

/** A turn of the wheel by this many pixels doubles or halves what is in view. */
const wheelPixelsToDouble = 400
/** Lines and pages, which some wheels count instead of pixels. */
const pixelsOf = [1, 30, 600] as const
/** A click may tremble by this much. */
const tremblePx = 4

/**
 * Wheel and pointer on a plot: the wheel zooms about the pointer, sideways or with Shift it moves; dragging with Shift or the
 * middle button moves; double click shows all. A plain drag is left to the plot, which draws a rectangle. Returns what ends it.
 */
export function listenToPlot(over: HTMLElement, input: PlotInput): () => void {
  const ending = new AbortController()
  const { signal } = ending
  let pressedAt: { x: number; y: number } | null = null
  let panningFromX: number | null = null

  over.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      const scale = pixelsOf[event.deltaMode] ?? 1
      const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX
      if (event.shiftKey || Math.abs(sideways) > Math.abs(event.deltaY)) input.panBy(-sideways * scale)
      else input.zoomAbout(2 ** ((event.deltaY * scale) / wheelPixelsToDouble), leftOf(event))
    },
    { passive: false, signal },
  )
  // Before the plot's own listener, which would begin to draw a rectangle.
  over.addEventListener(
    'mousedown',
    (event) => {
      pressedAt = { x: event.clientX, y: event.clientY }
      if (!event.shiftKey && event.button !== 1) return
      panningFromX = event.clientX
      event.stopImmediatePropagation()
      event.preventDefault()
    },
    { capture: true, signal },
  )
  addEventListener(
    'mousemove',
    (event) => {
      if (panningFromX === null) return
      input.panBy(event.clientX - panningFromX)
      panningFromX = event.clientX
    },
    { signal },
  )
  addEventListener(
    'mouseup',
    () => {
      panningFromX = null
    },
    { signal },
  )
  over.addEventListener(
    'click',
    (event) => {
      if (pressedAt === null || event.shiftKey) return
      const moved = Math.hypot(event.clientX - pressedAt.x, event.clientY - pressedAt.y)
      if (moved <= tremblePx) input.click(leftOf(event), topOf(event))
    },
    { signal },
  )
  over.addEventListener('dblclick', () => input.showAll(), { signal })
  over.addEventListener('mouseleave', () => input.leave(), { signal })
  return () => ending.abort()

  function leftOf({ clientX }: MouseEvent): number {
    return clientX - over.getBoundingClientRect().left
  }
  function topOf({ clientY }: MouseEvent): number {
    return clientY - over.getBoundingClientRect().top
  }
}
