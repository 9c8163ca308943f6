// Held by tests/browser/breaks/curveReview.spec.ts.
import { type RefObject, useEffect, useRef, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { filterName } from '#words/breaks/filterName.ts'
import { useHost } from '../../host/hostContext.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { displayOf } from '../../plots/forceDisplay.ts'
import type { CursorSample } from '../../plots/recorded/curveCursor.ts'
import { createRecordedPlot, type RecordedPlot } from '../../plots/recorded/recordedPlot.ts'
import type { Span } from '../../plots/zoom.ts'
import { type CurveLook, type FilterAnswer, noFilter } from './curveLook.ts'
import { isInCounts, sceneInForce } from './sceneInForce.ts'

type Listeners = {
  onCursor(sample: CursorSample | null): void
  onView(span: Span, whole: Span): void
  onFilter(answer: FilterAnswer): void
}

/** The plot of a break's curve in its place: asks for samples, and keeps marks, filter and units up to date. */
export function useCurvePlot(
  place: RefObject<HTMLDivElement | null>,
  record: BreakRecord,
  look: CurveLook,
  listeners: Listeners,
): { plot: RefObject<RecordedPlot | null>; inCounts: boolean; trouble: TroubleMessage | null } {
  const { client } = useHost()
  const quantities = useQuantities()
  const plot = useRef<RecordedPlot | null>(null)
  const latest = useRef(listeners)
  latest.current = listeners
  const [whole, setWhole] = useState<ForceCurve | null>(null)
  const [trouble, setTrouble] = useState<TroubleMessage | null>(null)
  const { breakId } = record.summary
  const inForce = resultInForce(record)
  const scaleKey = JSON.stringify((inForce ?? record.header).scale)
  const inCounts = isInCounts(record)
  const running = record.end === null

  // Made once for a break and the scale that makes the force; all else is handed on below
  useEffect(() => {
    if (place.current === null) return
    const made = createRecordedPlot(place.current, {
      display: displayOf(quantities, inCounts),
      async load(span, maxPoints) {
        try {
          const input = { breakId, maxPoints, fromS: span?.fromS ?? null, toS: span?.toS ?? null }
          const curve = await client.call('breaks.curve', input)
          setTrouble(null)
          if (span === null) setWhole(curve)
          return curve
        } catch (thrown) {
          setTrouble(troubleFrom(thrown))
          return null
        }
      },
      onCursor: (sample) => latest.current.onCursor(sample),
      onSpan: (span, all) => latest.current.onView(span, all),
    })
    plot.current = made
    return () => {
      plot.current = null
      made.destroy()
    }
  }, [client, breakId, running, scaleKey])

  useEffect(() => plot.current?.setDisplay(displayOf(quantities, inCounts)), [quantities, inCounts])

  useEffect(() => {
    if (whole !== null) plot.current?.setScene(sceneInForce(record, whole, look, quantities))
  }, [whole, record, quantities, look])

  const filterKey = look.filter === null ? null : JSON.stringify(look.filter)
  useEffect(() => {
    const { filter } = look
    if (filterKey === null || filter === null) {
      latest.current.onFilter(noFilter)
      plot.current?.setBeside(null)
      return
    }
    let current = true
    const tell = (answer: FilterAnswer) => current && latest.current.onFilter(answer)
    tell({ name: null, trouble: null, pending: true })
    plot.current?.setBeside(async (span, maxPoints) => {
      try {
        const input = { breakId, filter, maxPoints, fromS: span?.fromS ?? null, toS: span?.toS ?? null }
        const curve = await client.call('breaks.filtered', input)
        tell({ name: filterName(filter), trouble: null, pending: false })
        return curve
      } catch (thrown) {
        tell({ name: null, trouble: troubleFrom(thrown), pending: false })
        return null
      }
    })
    return () => {
      current = false
    }
  }, [client, breakId, running, scaleKey, filterKey])

  return { plot, inCounts, trouble }
}
