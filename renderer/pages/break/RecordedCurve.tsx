import { useEffect, useRef, useState } from 'react'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { BreakRecord, ForceCurve } from '#contract/records/break.ts'
import { useHost } from '#renderer/host/hostContext.ts'
import { useAnswer } from '#renderer/host/useAnswer.ts'
import { createRecordedPlot, type RecordedPlot } from '#renderer/plots/recordedPlot.ts'
import type { Span } from '#renderer/plots/zoom.ts'
import { Notice } from '#renderer/widgets/Notice.tsx'
import { useQuantities, writeFixed } from '#renderer/widgets/quantities.ts'
import { displayOf } from '../bench/LiveCurve.tsx'
import { isUncalibrated } from '../wording.ts'
import { marksOf } from './curveMarks.ts'

/** The stored curve of a break with its marks: drag or keys to zoom, cursor read-out, finer samples fetched on the way in. */
export function RecordedCurve({ breakId }: { breakId: number }) {
  const record = useAnswer('breaks.get', { breakId })
  return (
    <>
      <Notice trouble={record.error} />
      {record.value === null ? null : <CurveOf record={record.value} />}
    </>
  )
}

/** The curve of a break whose record is at hand. */
export function CurveOf({ record }: { record: BreakRecord }) {
  const { client } = useHost()
  const quantities = useQuantities()
  const place = useRef<HTMLDivElement>(null)
  const plot = useRef<RecordedPlot | null>(null)
  const [whole, setWhole] = useState<ForceCurve | null>(null)
  const [cursor, setCursor] = useState<{ timeS: number; shown: number } | null>(null)
  const [zoomed, setZoomed] = useState<Span | null>(null)
  const [trouble, setTrouble] = useState<TroubleMessage | null>(null)
  const { breakId } = record.summary
  const newest = record.evaluations.at(-1)
  const inCounts = (newest ?? record.header).scale.kind === 'none'
  const running = record.end === null

  // Made once for a break and a result, whose scale makes the force; units are handed on below
  useEffect(() => {
    if (place.current === null) return
    const made = createRecordedPlot(place.current, {
      display: displayOf(quantities, inCounts),
      async load(span, maxPoints) {
        try {
          const input = { breakId, maxPoints, fromS: span?.fromS ?? null, toS: span?.toS ?? null }
          const curve = await client.call('breaks.curve', input)
          if (span === null) setWhole(curve)
          return curve
        } catch (thrown) {
          setTrouble(troubleFrom(thrown))
          return null
        }
      },
      onCursor: setCursor,
      onSpan: (span, all) => setZoomed(span.fromS > all.fromS || span.toS < all.toS ? span : null),
    })
    plot.current = made
    return () => {
      plot.current = null
      made.destroy()
    }
  }, [client, breakId, running, newest?.evaluationId])

  useEffect(() => plot.current?.setDisplay(displayOf(quantities, inCounts)), [quantities, inCounts])
  useEffect(() => {
    if (whole === null) return
    const marks = newest === undefined ? [] : marksOf(newest.result, whole.timeS, whole.force, quantities.force.text)
    const capacityN = record.header.settings.capacityN
    plot.current?.setMarks(
      marks,
      capacityN === null || inCounts ? [] : [{ value: capacityN, label: 'rated load', kind: 'alarm' }],
    )
  }, [whole, newest, quantities, inCounts, record.header.settings.capacityN])

  const unit = inCounts ? 'counts' : quantities.force.unit
  return (
    <figure className="recorded-curve">
      <Notice trouble={trouble} />
      <div
        className="plot"
        ref={place}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the curve is zoomed and read by keys
        tabIndex={0}
        aria-label={`Curve of ${inCounts ? 'readings' : 'force'} over time. Plus and minus zoom, 0 shows all, arrow keys read samples.`}
        data-own-keys=""
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return
          if (plot.current?.key(event.key)) {
            event.preventDefault()
            event.stopPropagation()
          }
        }}
      />
      <figcaption>
        <span className="curve-cursor" aria-live="polite">
          {cursor === null
            ? 'Point at the curve, or use ← → to read it.'
            : `${writeFixed(cursor.timeS, 4)} s · ${writeFixed(cursor.shown, inCounts ? 0 : 2)} ${unit}`}
        </span>
        {isUncalibrated(record.summary.scaleKind) ? <strong className="tag">uncalibrated</strong> : null}
        <span className="curve-tools">
          {zoomed === null ? (
            <span className="quiet">drag to zoom</span>
          ) : (
            <span className="quiet">
              {writeFixed(zoomed.fromS, 3)} to {writeFixed(zoomed.toS, 3)} s
            </span>
          )}
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
          <button
            type="button"
            className="button button-small"
            disabled={zoomed === null}
            onClick={() => plot.current?.show(null)}
          >
            All
          </button>
        </span>
      </figcaption>
    </figure>
  )
}
