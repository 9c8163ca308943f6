import { useEffect, useRef } from 'react'
import type { BenchState } from '#contract/bench/bench.ts'
import { outcomePeakN } from '#words/bench/outcomePeak.ts'
import { useEvent } from '../../../host/useEvent.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { useLiveHistory } from '../../../parts/bench/liveHistory.ts'
import { displayOf } from '../../../plots/forceDisplay.ts'
import { createLivePlot, type LivePlot } from '../../../plots/live/livePlot.ts'
import { situationOf } from '../../../plots/live/liveView.ts'
import type { LevelLine } from '../../../plots/recorded/plotMarks.ts'

/** The curve as it happens, with start threshold and capacity. The drawing itself is outside React. */
export function LiveCurve({ bench }: { bench: BenchState }) {
  const quantities = useQuantities()
  const place = useRef<HTMLDivElement>(null)
  const plot = useRef<LivePlot | null>(null)
  const history = useLiveHistory()
  const inCounts = bench.scale.kind === 'none'
  const leastForce = leastForceOf(bench)

  // Made once; the other effects keep it up to date
  useEffect(() => {
    if (place.current === null) return
    const made = createLivePlot(place.current, {
      ring: history.ring,
      display: displayOf(quantities, inCounts),
      leastForce,
      reducedMotion: matchMedia('(prefers-reduced-motion: reduce)').matches,
    })
    plot.current = made
    return () => {
      plot.current = null
      made.destroy()
    }
  }, [])

  useEffect(
    () => plot.current?.setDisplay(displayOf(quantities, inCounts), leastForce),
    [quantities, inCounts, leastForce],
  )
  const peakN = inCounts ? null : outcomePeakN(bench)
  useEffect(
    () => plot.current?.setSituation(situationOf(bench.phase), history.captureFromS(), peakN),
    [bench.phase, history, peakN],
  )
  const threshold = bench.signal.startThreshold
  const capacityN = inCounts ? null : bench.capacityN
  useEffect(() => plot.current?.setLevels(levelsOf(threshold, capacityN)), [threshold, capacityN])
  useEvent('live.frame', (frame) => plot.current?.push(frame))

  return (
    <figure className="live-curve" aria-label={`Live curve of ${inCounts ? 'readings in counts' : 'force'} over time`}>
      <div ref={place} className="plot" />
    </figure>
  )
}

function leastForceOf(bench: BenchState): number {
  const threshold = bench.signal.startThreshold ?? 0
  if (bench.scale.kind === 'none') return Math.max(1000, threshold * 5)
  return Math.max(bench.capacityN === null ? 50 : bench.capacityN * 0.02, threshold * 5)
}

function levelsOf(threshold: number | null, capacityN: number | null): LevelLine[] {
  const levels: LevelLine[] = []
  if (threshold !== null) levels.push({ value: threshold, label: 'recording starts', kind: 'threshold' })
  if (capacityN !== null) {
    levels.push({ value: capacityN * 0.9, label: '90 % of rated load', kind: 'warning' })
    levels.push({ value: capacityN, label: 'rated load', kind: 'alarm' })
  }
  return levels
}
