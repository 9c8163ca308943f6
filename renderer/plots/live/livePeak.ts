import type { LiveFrame } from '#contract/bench/bench.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import type { PointMark } from '../recorded/plotMarks.ts'
import type { SampleRing } from './sampleRing.ts'

/** The highest load of a capture, in the unit of the stream, and when it was reached. */
export type LivePeak = { timeS: number; force: number }

/** Where in a frame a load was reached: at its sample nearest to it. */
export function peakInFrame(frame: Pick<LiveFrame, 'timeS' | 'force'>, force: number): LivePeak {
  let best = 0
  for (let i = 1; i < frame.force.length; i++)
    if (Math.abs(frame.force[i]! - force) < Math.abs(frame.force[best]! - force)) best = i
  return { timeS: frame.timeS[best] ?? 0, force }
}

/** Where after a time a load was reached: at the kept sample nearest to it; at that time itself when none is kept. */
export function peakInRing(ring: SampleRing, fromS: number, force: number): LivePeak {
  let best = ring.indexFrom(fromS)
  if (best >= ring.length) return { timeS: fromS, force }
  for (let i = best + 1; i < ring.length; i++)
    if (Math.abs(ring.forceAt(i) - force) < Math.abs(ring.forceAt(best) - force)) best = i
  return { timeS: ring.timeAt(best), force }
}

/** The peak as it is marked on the curve, in shown units. */
export function peakMark({ timeS, force }: LivePeak, display: ForceDisplay): PointMark {
  const value = force * display.factor
  return { timeS, value, label: `${display.format(value)} ${display.unit}`, shape: 'peak' }
}
