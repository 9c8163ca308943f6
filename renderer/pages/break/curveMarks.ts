import type { EvaluationResult } from '#contract/records/evaluation.ts'
import type { PointMark } from '#renderer/plots/plotMarks.ts'
import { eventNames } from '../wording.ts'

/** A curve's own value nearest to a time, so that a mark stands on the line. */
export function forceNear(timeS: Float64Array, force: Float64Array, atS: number): number {
  let low = 0
  let high = timeS.length - 1
  while (high - low > 1) {
    const middle = (low + high) >>> 1
    if (timeS[middle]! <= atS) low = middle
    else high = middle
  }
  const nearest = Math.abs(timeS[low]! - atS) <= Math.abs(timeS[high]! - atS) ? low : high
  return force[nearest] ?? 0
}

/** Peak, onset, break and events of an evaluation as marks on its curve; `peak` writes the peak. */
export function marksOf(
  result: EvaluationResult,
  timeS: Float64Array,
  force: Float64Array,
  peak: (peakN: number) => string,
): PointMark[] {
  const marks: PointMark[] = []
  const { peakTimeS, peakN, onsetTimeS, breakTimeS } = result
  if (timeS.length === 0) return marks
  if (peakTimeS !== null)
    marks.push({
      timeS: peakTimeS,
      value: peakN ?? forceNear(timeS, force, peakTimeS),
      label: peakN === null ? 'peak' : `peak ${peak(peakN)}`,
      shape: 'peak',
    })
  if (onsetTimeS !== null)
    marks.push({
      timeS: onsetTimeS,
      value: forceNear(timeS, force, onsetTimeS),
      label: 'loading starts',
      shape: 'onset',
    })
  if (breakTimeS !== null)
    marks.push({ timeS: breakTimeS, value: forceNear(timeS, force, breakTimeS), label: 'break', shape: 'break' })
  for (const event of result.events)
    if (event.kind !== 'seating')
      marks.push({
        timeS: event.startTimeS,
        value: forceNear(timeS, force, event.startTimeS),
        label: eventNames[event.kind].toLowerCase(),
        shape: 'event',
      })
  return marks
}
