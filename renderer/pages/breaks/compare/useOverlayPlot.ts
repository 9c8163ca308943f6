// Held by tests/browser/breaks/compareRun.spec.ts.
import { type RefObject, useEffect, useRef, useState } from 'react'
import { useHost } from '../../../host/hostContext.ts'
import type { ForceDisplay } from '../../../plots/forceDisplay.ts'
import type { OverlayCurve, OverlayMedian } from '../../../plots/overlay/overlayCurve.ts'
import { createOverlayPlot, type OverlayPlot } from '../../../plots/overlay/overlayPlot.ts'
import type { OverlayReading } from '../../../plots/overlay/overlayReading.ts'
import type { FinerStretch } from '../../../plots/overlay/overlayView.ts'
import type { Span } from '../../../plots/zoom.ts'
import { buildGivingWay } from './loadedCurves.ts'

const pointsOfAStretch = 200_000

export type OverlayPlotProps = {
  curves: readonly OverlayCurve[]
  median: OverlayMedian | null
  display: ForceDisplay
  timeUnit: 's' | '%'
  /** The curve to stand out. */
  emphasis: { key: number } | null
  onPoint(key: number | null): void
  onChoose(key: number): void
}

/** The plot of many curves in its place: kept up to date, and given finer samples where it comes to rest. */
export function useOverlayPlot(
  place: RefObject<HTMLDivElement | null>,
  props: OverlayPlotProps,
): {
  plot: RefObject<OverlayPlot | null>
  reading: OverlayReading | null
  /** The stretch in view; null: all of it. */
  zoomed: Span | null
} {
  const { curves, median, display, timeUnit, emphasis } = props
  const { client } = useHost()
  const plot = useRef<OverlayPlot | null>(null)
  const latest = useRef(props)
  latest.current = props
  const [reading, setReading] = useState<OverlayReading | null>(null)
  const [zoomed, setZoomed] = useState<Span | null>(null)

  useEffect(() => {
    if (place.current === null) return
    let current = true
    async function fetchFiner(stretches: readonly FinerStretch[]): Promise<void> {
      for (const { key, fromS, toS } of stretches) {
        try {
          const input = { breakId: key, fromS, toS, maxPoints: pointsOfAStretch }
          const { timeS, force } = await client.call('breaks.curve', input)
          const levels = await buildGivingWay(timeS, force)
          if (!current) return
          // Thinning leaves at least half as many points as it may.
          plot.current?.setFine(key, { levels, complete: timeS.length < pointsOfAStretch / 2 })
        } catch {
          // The coarser curve stays in sight, and the next rest of the view asks again.
          return
        }
      }
    }
    const made = createOverlayPlot(place.current, {
      onCursor: setReading,
      onPoint: (key) => latest.current.onPoint(key),
      onChoose: (key) => latest.current.onChoose(key),
      onSpan: (span, whole) => setZoomed(span.fromS > whole.fromS || span.toS < whole.toS ? span : null),
      onFiner: (stretches) => void fetchFiner(stretches),
    })
    plot.current = made
    return () => {
      current = false
      plot.current = null
      made.destroy()
    }
  }, [client])

  useEffect(
    () => plot.current?.setDisplay(display, display.unit === '%' ? '% of peak' : display.unit, timeUnit),
    [display, timeUnit],
  )
  useEffect(() => plot.current?.setCurves(curves), [curves])
  useEffect(() => plot.current?.setMedian(median), [median])
  useEffect(() => plot.current?.setEmphasis(emphasis?.key ?? null), [emphasis?.key])

  return { plot, reading, zoomed }
}
