// Held by tests/browser/figureReading.spec.ts.
import { type RefObject, useLayoutEffect, useRef, useState } from 'react'
import type { FigureSize } from '#figures/drawing/figure.ts'

/** Where a place has no width by itself, so that it is as wide as what is drawn in it. */
const ownWidthPx = 560

/** The width of a place and the height of its text, measured again when the window changes; null before the place is there. */
export function useFigureSize(): { place: RefObject<HTMLDivElement | null>; size: FigureSize | null } {
  const place = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState<FigureSize | null>(null)
  useLayoutEffect(() => {
    const element = place.current
    if (element === null) return
    const measure = () => {
      const emPx = Number.parseFloat(getComputedStyle(element).fontSize)
      const widthPx = Math.round(element.getBoundingClientRect().width)
      setSize((before) => {
        if (widthPx === 0) return before ?? { widthPx: ownWidthPx, emPx }
        return before?.widthPx === widthPx && before.emPx === emPx ? before : { widthPx, emPx }
      })
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { place, size }
}
