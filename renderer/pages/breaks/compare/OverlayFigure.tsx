import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import { placeWords } from '#words/breaks/compare/compareWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useHost } from '../../../host/hostContext.ts'
import type { ForceDisplay } from '../../../plots/forceDisplay.ts'
import type { OverlayCurve, OverlayMedian } from '../../../plots/overlay/overlayCurve.ts'
import { createOverlayPlot, type OverlayPlot } from '../../../plots/overlay/overlayPlot.ts'
import type { OverlayReading } from '../../../plots/overlay/overlayReading.ts'
import type { FinerStretch } from '../../../plots/overlay/overlayView.ts'
import type { Span } from '../../../plots/zoom.ts'
import { buildGivingWay } from './loadedCurves.ts'

const pointsOfAStretch = 200_000

export type OverlayFigureProps = {
  curves: readonly OverlayCurve[]
  median: OverlayMedian | null
  display: ForceDisplay
  timeUnit: 's' | '%'
  emphasis: { key: number; name: string } | null
  onPoint(key: number | null): void
  onChoose(key: number): void
  /** Keys that move from curve to curve or open one; true when it was such a key. */
  onKey(name: string): boolean
}

/** All curves in one plot, with the read-out under the cursor. */
export function OverlayFigure(props: OverlayFigureProps) {
  const { curves, median, display, timeUnit, emphasis } = props
  const { client } = useHost()
  const place = useRef<HTMLDivElement>(null)
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

  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (!props.onKey(event.key) && !plot.current?.key(event.key)) return
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <figure className="overlay-figure">
      <div
        className="plot"
        ref={place}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the curves are zoomed and read by keys
        tabIndex={0}
        aria-label="Curves over each other. Plus and minus zoom, 0 shows all, arrow keys up and down go from curve to curve, left and right read them, Enter opens the one that stands out."
        data-own-keys=""
        onKeyDown={onKeyDown}
      />
      <figcaption>
        <span className="curve-cursor" aria-live="polite">
          {reading === null
            ? 'Point at a curve, or take ↑ ↓ and ← →'
            : readingWords(reading, emphasis?.name ?? null, display, timeUnit)}
        </span>
        <span className="curve-tools">
          <span className="quiet">
            {zoomed === null
              ? 'drag or wheel to zoom'
              : `${placeNumber(zoomed.fromS)} to ${placeNumber(zoomed.toS)} ${timeUnit}`}
          </span>
          <button
            type="button"
            className="button button-small"
            aria-label="Zoom in"
            onClick={() => plot.current?.key('+')}
          >
            +
          </button>
          <button
            type="button"
            className="button button-small"
            aria-label="Zoom out"
            onClick={() => plot.current?.key('-')}
          >
            −
          </button>
          <button type="button" className="button button-small" onClick={() => plot.current?.show(null)}>
            All
          </button>
        </span>
      </figcaption>
    </figure>
  )
}

function readingWords(reading: OverlayReading, name: string | null, display: ForceDisplay, timeUnit: 's' | '%') {
  const value = (force: number) => `${display.format(force * display.factor)} ${display.unit}`
  const parts = [placeWords(reading.at, timeUnit)]
  if (name !== null) parts.push(`${name} ${reading.force === null ? 'is not there' : value(reading.force)}`)
  if (reading.median !== null) parts.push(`median of ${reading.median.of}: ${value(reading.median.value)}`)
  return parts.join(' · ')
}

function placeNumber(at: number): string {
  return writeFixed(at, Math.abs(at) < 10 ? 3 : 2)
}
