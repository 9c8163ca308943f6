import { type KeyboardEvent, useRef } from 'react'
import { placeWords } from '#words/breaks/compare/compareWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { ZoomButtons } from '../../../parts/curve/ZoomButtons.tsx'
import type { ForceDisplay } from '../../../plots/forceDisplay.ts'
import type { OverlayReading } from '../../../plots/overlay/overlayReading.ts'

import { type OverlayPlotProps, useOverlayPlot } from './useOverlayPlot.ts'

export type OverlayFigureProps = Omit<OverlayPlotProps, 'emphasis'> & {
  emphasis: { key: number; name: string } | null
  /** Keys that move from curve to curve or open one; true when it was such a key. */
  onKey(name: string): boolean
}

/** All curves in one plot, with the read-out under the cursor. */
export function OverlayFigure(props: OverlayFigureProps) {
  const { display, timeUnit, emphasis } = props
  const place = useRef<HTMLDivElement>(null)
  const { plot, reading, zoomed } = useOverlayPlot(place, props)

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
          <ZoomButtons onKey={(name) => plot.current?.key(name)} onAll={() => plot.current?.show(null)} />
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
