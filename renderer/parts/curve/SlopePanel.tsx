import { useEffect, useRef, useState } from 'react'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { useHost } from '../../host/hostContext.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { displayOf } from '../../plots/forceDisplay.ts'
import { createSlopePlot, type SlopePlot } from '../../plots/recorded/slopePlot.ts'
import type { Span } from '../../plots/zoom.ts'
import { Notice } from '../../widgets/Notice.tsx'

/** How long a view must stand before its slope is worked out. */
const settleMs = 80

/** The slope of the curve, below it on the same time axis and with the same cursor. */
export function SlopePanel({
  breakId,
  windowS,
  inCounts,
  view: { span, whole },
  cursorS,
  onCursor,
  onShow,
  onValue,
}: {
  breakId: number
  windowS: number
  inCounts: boolean
  view: { span: Span; whole: Span }
  cursorS: number | null
  onCursor(timeS: number | null): void
  onShow(span: Span): void
  /** The slope at the cursor, in shown units. */
  onValue(slope: number | null): void
}) {
  const { client } = useHost()
  const quantities = useQuantities()
  const place = useRef<HTMLDivElement>(null)
  const plot = useRef<SlopePlot | null>(null)
  const listeners = useRef({ onCursor, onShow, onValue })
  listeners.current = { onCursor, onShow, onValue }
  const [slope, setSlope] = useState<ForceCurve | null>(null)
  const [trouble, setTrouble] = useState<TroubleMessage | null>(null)
  const { fromS, toS } = span
  const isWhole = fromS <= whole.fromS && toS >= whole.toS

  useEffect(() => {
    if (place.current === null) return
    const made = createSlopePlot(place.current, {
      display: displayOf(quantities, inCounts),
      onCursor: (timeS) => listeners.current.onCursor(timeS),
      onShow: (to) => listeners.current.onShow(to),
    })
    plot.current = made
    return () => {
      plot.current = null
      made.destroy()
    }
  }, [])
  useEffect(() => plot.current?.setDisplay(displayOf(quantities, inCounts)), [quantities, inCounts])

  useEffect(() => {
    let current = true
    const timer = setTimeout(async () => {
      const maxPoints = Math.max(2 * Math.round((place.current?.clientWidth ?? 600) * devicePixelRatio), 400)
      const stretch = isWhole ? { fromS: null, toS: null } : { fromS, toS }
      try {
        const answer = await client.call('breaks.slope', { breakId, windowS, maxPoints, ...stretch })
        if (!current) return
        setSlope(answer)
        setTrouble(null)
      } catch (thrown) {
        if (current) setTrouble(troubleFrom(thrown))
      }
    }, settleMs)
    return () => {
      current = false
      clearTimeout(timer)
    }
  }, [client, breakId, windowS, fromS, toS, isWhole])

  useEffect(() => plot.current?.setSlope(slope, { fromS, toS }, whole), [slope, fromS, toS, whole])
  useEffect(() => {
    listeners.current.onValue(plot.current?.cursorAt(cursorS) ?? null)
  }, [cursorS, slope, quantities])

  const unit = inCounts ? 'counts' : quantities.force.unit
  return (
    <div className="slope-panel">
      <p className="slope-name">
        Slope, {unit}/s, by least squares over {windowS * 1000} ms
      </p>
      <Notice trouble={trouble} />
      <div className="plot" ref={place} aria-hidden="true" />
    </div>
  )
}
