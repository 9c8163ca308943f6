import type { CurveEvent } from '#contract/breaks/evaluation.ts'

/** An early drop is placed by means of samples: the highest sample before it may lie so much earlier, s. */
const beforeDropS = 0.02

/** The first early drop, whose load a person may declare to be the failure; null: none was found. */
export function firstEarlyDrop(events: readonly CurveEvent[]): CurveEvent | null {
  const drops = events.filter(({ kind }) => kind === 'pop-in' || kind === 'stick-slip')
  return drops.toSorted((a, b) => a.startTimeS - b.startTimeS)[0] ?? null
}

/**
 * The stretch of a curve, s, in which the load before an early drop is its highest sample.
 *
 *   from  start of the drop − 0.02 s
 *   to    its end; of stick-slip no more than half a period after the start, since later slips may begin higher
 *
 * Common practice, no source. Checked: tests/domain/signal/events/prematureLoad.spec.ts.
 */
export function prematureStretch({ kind, startTimeS, endTimeS, cycles, periodS }: CurveEvent): {
  fromS: number
  toS: number
} {
  const fromS = startTimeS - beforeDropS
  if (kind !== 'stick-slip') return { fromS, toS: endTimeS }
  const period = periodS ?? (endTimeS - startTimeS) / Math.max(1, cycles ?? 1)
  return { fromS, toS: Math.min(endTimeS, startTimeS + period / 2) }
}

/**
 * Index of the sample whose load counts when a curve's first early drop is declared the failure: the highest raw one of
 * `prematureStretch`, the first of equals, glitches left out; −1: there is no early drop, or no sample of it here. Gives the
 * same sample for the whole curve and for a part of it that holds the stretch.
 *
 * Checked: tests/domain/signal/events/prematureLoad.spec.ts.
 */
export function prematureIndex(events: readonly CurveEvent[], timeS: Float64Array, force: Float64Array): number {
  const drop = firstEarlyDrop(events)
  if (drop === null) return -1
  const { fromS, toS } = prematureStretch(drop)
  const glitches = events.filter(
    ({ kind, startTimeS, endTimeS }) => kind === 'glitch' && endTimeS >= fromS && startTimeS <= toS,
  )
  let highest = -1
  for (let i = 0; i < timeS.length && timeS[i]! <= toS; i++) {
    const atS = timeS[i]!
    if (atS < fromS || (highest >= 0 && force[i]! <= force[highest]!)) continue
    if (!glitches.some(({ startTimeS, endTimeS }) => startTimeS <= atS && atS <= endTimeS)) highest = i
  }
  return highest
}
