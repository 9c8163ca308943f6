import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import type { LoadedCurve } from '../loadedCurve.ts'
import { plainEvent } from '../plainEvent.ts'
import type { PartialDrop } from './partialDrops.ts'

/**
 * The event that partial drops make: one is a pop-in, several are stick-slip, none is none.
 *
 *   dropPercent    100 ΔF / F         of the largest drop ΔF, from the load F above the level at rest
 *   percentOfPeak  100 F / P          of the first drop, P peak above the level at rest
 *   period         (t_last − t_first) / (drops − 1)      with stiffness K and speed v of press and specimen it is ΔF / (K v)
 *
 * Checked: tests/domain/signal/events/drops/dropEvents.spec.ts.
 */
export function dropEvents(curve: Pick<LoadedCurve, 'zero' | 'peak'>, drops: readonly PartialDrop[]): CurveEvent[] {
  const [first, last] = [drops[0], drops.at(-1)]
  if (first === undefined || last === undefined) return []
  const { zero, peak } = curve
  const largest = drops.reduce((a, b) => (b.drop > a.drop ? b : a))
  const event = {
    ...plainEvent('pop-in', { startTimeS: first.startS, endTimeS: last.recoveredS }),
    dropN: largest.drop,
    dropPercent: (100 * largest.drop) / (largest.from - zero),
    fromN: first.from - zero,
    percentOfPeak: (100 * (first.from - zero)) / (peak - zero),
  }
  if (drops.length === 1) return [event]
  return [
    {
      ...event,
      kind: 'stick-slip',
      cycles: drops.length,
      meanDropN: drops.reduce((sum, { drop }) => sum + drop, 0) / drops.length,
      leastDropN: Math.min(...drops.map(({ drop }) => drop)),
      periodS: (last.startS - first.startS) / (drops.length - 1),
    },
  ]
}
