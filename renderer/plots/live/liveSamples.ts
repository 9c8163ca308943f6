import { type ThinnedPoints, thinByMinimumAndMaximum } from '../decimation.ts'
import { roundUpCalmly } from './calmAxis.ts'
import type { LiveView } from './liveView.ts'
import type { SampleRing } from './sampleRing.ts'

/** The newest stream time, s. */
export function latestOf(ring: SampleRing): number {
  return ring.length > 0 ? ring.timeAt(ring.length - 1) : 0
}

/**
 * Thins the samples in view to so many columns, in shown units; returns how far they reach as load, in the unit of the stream:
 * a lone electrical glitch sets no axis. What came before a capture may still glide out of sight: it does not set the height
 * of the capture.
 */
export function thinInView(
  ring: SampleRing,
  view: Pick<LiveView, 'shownFromS' | 'shownToS' | 'captureFromS'>,
  columns: number,
  factor: number,
  into: ThinnedPoints,
): { lowest: number; highest: number } {
  const { shownFromS, shownToS, captureFromS } = view
  const from = Math.max(ring.indexFrom(shownFromS) - 1, 0)
  const to = Math.min(ring.indexFrom(shownToS) + 1, ring.length)
  thinByMinimumAndMaximum(ring, from, to, (shownToS - shownFromS) / columns, into)
  const heightFromS = captureFromS ?? Number.NEGATIVE_INFINITY
  let highest = 0
  let lowest = 0
  for (let i = from; i < to; i++) {
    const load = ring.loadAt(i)
    if (load > highest && ring.timeAt(i) >= heightFromS) highest = load
    if (load < lowest) lowest = load
  }
  for (let i = 0; i < into.length; i++) into.force[i]! *= factor
  return { lowest, highest }
}

/** The range of the force axis, in shown units. Below an evaluated peak what lies deep is a disturbance and may be cut. */
export function shownRange(
  { shownCeiling }: Pick<LiveView, 'shownCeiling'>,
  lowest: number,
  factor: number,
  isEvaluated: boolean,
): { min: number; max: number } {
  const max = shownCeiling * factor
  const deepest = isEvaluated ? Math.max(lowest * factor, -0.2 * max) : lowest * factor
  return { min: deepest < -0.06 * max ? -roundUpCalmly(-deepest) : -0.06 * max, max }
}

/** Whether the view still glides. */
export function moves(before: LiveView, now: LiveView): boolean {
  return (
    now.shownCeiling !== before.shownCeiling || now.shownFromS !== before.shownFromS || now.shownToS !== before.shownToS
  )
}
