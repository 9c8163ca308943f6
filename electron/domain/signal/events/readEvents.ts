import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { CurveEvent, LoadCourse } from '#contract/breaks/evaluation.ts'
import { courseOf } from './course.ts'
import { meansBeforeBreak, upTo } from './curvePart.ts'
import { dropEvents } from './drops/dropEvents.ts'
import { readFinalDrop } from './drops/finalDrop.ts'
import { findPartialDrops } from './drops/partialDrops.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { countPeaks } from './localPeaks.ts'
import { noiseOfMeans } from './noiseOfMeans.ts'
import { readPauses } from './pauses.ts'
import { plainEvent } from './plainEvent.ts'
import { seatingEndS } from './seating.ts'

/** Where one of these begins the load was no longer driven on evenly. */
const uneven: readonly CurveEvent['kind'][] = ['pop-in', 'stick-slip', 'hold', 'reload', 'plateau']

/** Everything that is read from a finished loading. The events need not be in order. */
export function readEvents(
  curve: LoadedCurve,
  settings: DetectionSettings,
): { events: CurveEvent[]; course: LoadCourse } {
  const noise = noiseOfMeans(curve, meansBeforeBreak(curve))
  const events: CurveEvent[] = dropEvents(curve, findPartialDrops(curve, noise))
  const fall = readFinalDrop(curve)
  if (fall !== null) events.push(fall)
  events.push(...readPauses(curve, fall?.startTimeS ?? null))
  const unevenS = events.filter(({ kind }) => uneven.includes(kind)).map(({ startTimeS }) => startTimeS)
  const drivenUntilS = unevenS.length === 0 ? null : Math.min(...unevenS)
  const seatedS = seatingEndS(upTo(curve, Math.min(curve.peakS, drivenUntilS ?? curve.peakS)), noise)
  if (seatedS !== null) events.push(plainEvent('seating', { startTimeS: curve.onsetS, endTimeS: seatedS }))
  return { events, course: courseOf(curve, countPeaks(curve, noise), seatedS, drivenUntilS, settings) }
}
