// Held by tests/browser/figureReading.spec.ts.
import { type RefObject, useLayoutEffect, useRef, useState } from 'react'
import type { FigureSize } from '#figures/drawing/figure.ts'

/** The width of a place and the height of its text, measured again when the window changes. */
export function useFigureSize(): { place: RefObject<HTMLDivElement | null>; size: FigureSize } {
  const place = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState<FigureSize>({ widthPx: 560, emPx: 12.5 })
  useLayoutEffect(() => {
    const element = place.current
    if (element === null) return
    const measure = () => {
      const emPx = Number.parseFloat(getComputedStyle(element).fontSize)
      const widthPx = Math.round(element.getBoundingClientRect().width)
      if (widthPx > 0)
        setSize((before) => (before.widthPx === widthPx && before.emPx === emPx ? before : { widthPx, emPx }))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { place, size }
}
