import { useEffect, useMemo, useRef, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { seatedLineOf } from '#figures/breaks/curveScene.ts'
import { CurveFigure, type CurveHandle } from '../../../../parts/curve/CurveFigure.tsx'
import { CurveFileButtons } from '../../../../parts/curve/CurveFileButtons.tsx'
import { type CurveLook, type FilterAnswer, noFilter } from '../../../../parts/curve/curveLook.ts'
import { useSingleKeys } from '../../../../parts/routing/singleKeys.ts'
import { EventList } from '../events/EventList.tsx'
import { CurveTools, type ToolsDraft } from './CurveTools.tsx'
import { firstDraft, readFilter, readWindow } from './curveFilterForm.ts'

/** The curve with what happened on it beside it, and what may be laid over it. */
export function ReviewedCurve({
  record,
  inSight,
  onKept,
  onPick,
}: {
  record: BreakRecord
  /** Something about the curve is being decided. */
  inSight: boolean
  onKept(timeS: number | null): void
  onPick?: (timeS: number) => void
}) {
  const result = resultInForce(record)?.result ?? null
  const events = result?.events ?? []
  const hasToe = result !== null && seatedLineOf(result) !== null
  const curve = useRef<CurveHandle>(null)
  const place = useRef<HTMLDivElement>(null)
  const [chosen, setChosen] = useState<number | null>(null)
  const [filterAnswer, setFilterAnswer] = useState<FilterAnswer>(noFilter)
  const [draft, setDraft] = useState<ToolsDraft>(() => {
    const filter = firstDraft(result?.sampleRateHz ?? null)
    return { filter, slope: false, slopeMs: filter.windowMs, seatedLine: false }
  })
  const read = readFilter(draft.filter)
  const slopeWindow = readWindow(draft.slopeMs)
  const windowS = 'error' in slopeWindow ? null : slopeWindow.windowS
  const filterKey = JSON.stringify(read.filter)
  const look: CurveLook = useMemo(
    () => ({
      filter: JSON.parse(filterKey),
      slopeWindowS: draft.slope ? windowS : null,
      seatedLine: draft.seatedLine && hasToe,
      chosen,
    }),
    [filterKey, draft.slope, windowS, draft.seatedLine, hasToe, chosen],
  )

  useSingleKeys((name) => {
    if (name.toLowerCase() !== 'c') return false
    place.current?.querySelector<HTMLElement>('[role=application]')?.focus()
    return true
  })

  useEffect(() => {
    // In a narrow window the dialog lies over the lower part of the page
    const block = matchMedia('(max-width: 999px)').matches ? 'start' : 'nearest'
    if (inSight) place.current?.firstElementChild?.scrollIntoView({ block })
  }, [inSight])

  function choose(index: number | null): void {
    setChosen(index)
    const event = index === null ? undefined : events[index]
    if (event === undefined) curve.current?.showAll()
    else curve.current?.showAbout({ fromS: event.startTimeS, toS: event.endTimeS })
  }

  function key(name: string): boolean {
    if (name === 'Escape' && chosen !== null) choose(null)
    else if (name === '.' && events.length > 0) choose(Math.min((chosen ?? -1) + 1, events.length - 1))
    else if (name === ',' && events.length > 0) choose(Math.max((chosen ?? events.length) - 1, 0))
    else return false
    return true
  }

  return (
    <>
      <div className="break-top" ref={place}>
        <CurveFigure
          record={record}
          look={look}
          handle={curve}
          onKey={key}
          onFilter={setFilterAnswer}
          onKept={onKept}
          {...(onPick === undefined ? {} : { onPick })}
        />
        <section className="break-events" aria-labelledby="events-title">
          <h2 id="events-title">Events</h2>
          <EventList events={result === null ? null : events} chosen={chosen} onChoose={choose} />
        </section>
      </div>
      <CurveTools
        draft={draft}
        onDraft={setDraft}
        filterError={read.error}
        slopeError={'error' in slopeWindow ? slopeWindow.error : null}
        filterAnswer={filterAnswer}
        hasToe={hasToe}
      />
      <CurveFileButtons record={record} />
    </>
  )
}
