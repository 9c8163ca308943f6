import { type KeyboardEvent, type Ref, type RefObject, useEffect, useImperativeHandle, useRef, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import type { CursorSample } from '../../plots/recorded/curveCursor.ts'
import type { RecordedPlot } from '../../plots/recorded/recordedPlot.ts'
import { isWhole } from '../../plots/viewKeys.ts'
import type { Span } from '../../plots/zoom.ts'
import { Keys } from '../../widgets/Keys.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import type { CurveLook, FilterAnswer } from './curveLook.ts'
import { SlopePanel } from './SlopePanel.tsx'
import { useCurvePlot } from './useCurvePlot.ts'
import { ZoomButtons } from './ZoomButtons.tsx'
import './curve.css'

/** What surrounds a curve asks of it. */
export type CurveHandle = { showAbout(stretch: Span): void; showAll(): void; focus(): void }

/** The stored curve of a break with what an evaluation says of it: zoom, pan and read it by mouse or keys. */
export function CurveFigure({
  record,
  look,
  handle,
  onKey,
  onFilter,
  onPick,
  onKept,
}: {
  record: BreakRecord
  look: CurveLook
  handle?: Ref<CurveHandle>
  /** Hears a key that is none of the plot's own; true when it was used. */
  onKey?: (name: string) => boolean
  onFilter?: (answer: FilterAnswer) => void
  /** Takes the sample under the cursor for the peak. */
  onPick?: (timeS: number) => void
  /** Hears which sample is kept, s; null: none. */
  onKept?: (timeS: number | null) => void
}) {
  const quantities = useQuantities()
  const place = useRef<HTMLDivElement>(null)
  const [cursor, setCursor] = useState<CursorSample | null>(null)
  const [view, setView] = useState<{ span: Span; whole: Span } | null>(null)
  const [slope, setSlope] = useState<number | null>(null)
  const { plot, inCounts, trouble } = useCurvePlot(place, record, look, {
    onCursor(sample) {
      setCursor(sample)
      onKept?.(sample?.kept ? sample.timeS : null)
    },
    onView: (span, whole) => setView({ span, whole }),
    onFilter: onFilter ?? (() => {}),
  })
  useImperativeHandle(handle, () => ({
    showAbout: (stretch) => plot.current?.showAbout(stretch),
    showAll: () => plot.current?.show(null),
    focus: () => place.current?.focus(),
  }))
  useEffect(() => {
    if (look.slopeWindowS === null) setSlope(null)
  }, [look.slopeWindowS])

  const zoomed = view === null || isWhole(view) ? null : view.span
  const pick = () => {
    if (cursor !== null) onPick?.(cursor.timeS)
  }
  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const isPick = onPick !== undefined && /^p$/i.test(event.key)
    if (isPick) pick()
    if (!isPick && !plot.current?.key(event.key, event.shiftKey) && !onKey?.(event.key)) return
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <figure className="recorded-curve" data-slope={look.slopeWindowS === null ? undefined : ''}>
      <Notice trouble={trouble} />
      <div
        className="plot"
        ref={place}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the curve is zoomed and read by keys
        tabIndex={0}
        aria-label={`Curve of ${inCounts ? 'readings' : 'force'} over time. Plus and minus zoom, 0 shows all, arrow keys read samples.`}
        data-own-keys=""
        onKeyDown={onKeyDown}
      />
      {look.slopeWindowS === null || view === null ? null : (
        <SlopePanel
          breakId={record.summary.breakId}
          windowS={look.slopeWindowS}
          inCounts={inCounts}
          view={view}
          cursorS={cursor?.timeS ?? null}
          onCursor={(timeS) => timeS !== null && plot.current?.cursorTo(timeS)}
          onShow={(span) => plot.current?.show(span)}
          onValue={setSlope}
        />
      )}
      <figcaption>
        <span className="curve-cursor" aria-live="polite">
          {cursor === null
            ? `Point or ← → to read, ${onPick === undefined ? '' : 'click to keep, '}drag or wheel to zoom.`
            : cursorWords(cursor, slope, inCounts ? 'counts' : quantities.force.unit)}
        </span>
        {handle === undefined && isUncalibrated(record.summary.scaleKind) ? (
          <strong className="tag">uncalibrated</strong>
        ) : null}
        <CurveTools plot={plot} zoomed={zoomed} onPick={onPick === undefined ? null : pick} canPick={cursor !== null} />
      </figcaption>
    </figure>
  )
}

/** What can be done with the curve by mouse. `onPick` null: no sample can be taken for the peak. */
function CurveTools({
  plot,
  zoomed,
  onPick,
  canPick,
}: {
  plot: RefObject<RecordedPlot | null>
  zoomed: Span | null
  onPick: (() => void) | null
  canPick: boolean
}) {
  return (
    <span className="curve-tools">
      {onPick === null ? null : (
        <button type="button" className="button button-small" aria-disabled={!canPick} onClick={onPick}>
          Take this sample as the peak <Keys keys="P" />
        </button>
      )}
      <span className="quiet">
        {zoomed === null ? 'whole curve' : `${writeFixed(zoomed.fromS, 3)} to ${writeFixed(zoomed.toS, 3)} s`}
      </span>
      <ZoomButtons
        isAll={zoomed === null}
        onKey={(name) => plot.current?.key(name, false)}
        onAll={() => plot.current?.show(null)}
      />
    </span>
  )
}

/** What the cursor reads, of everything that is shown there. */
function cursorWords({ timeS, shown, beside, kept }: CursorSample, slope: number | null, unit: string): string {
  const inCounts = unit === 'counts'
  const decimals = inCounts ? 0 : 2
  return [
    `${kept ? 'Kept: ' : ''}${writeFixed(timeS, 4)} s · ${writeFixed(shown, decimals)} ${unit}`,
    beside === null ? null : `filtered ${writeFixed(beside, decimals)} ${unit}`,
    slope === null ? null : `slope ${writeFixed(slope, inCounts ? 0 : 1)} ${unit}/s`,
  ]
    .filter((words) => words !== null)
    .join(' · ')
}
