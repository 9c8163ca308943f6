import type * as z from 'zod'
import { type CurveEvent, curveEvent } from '#contract/breaks/evaluation.ts'

/** An event of a curve with null for everything that is not given. */
export function madeEvent(given: Partial<z.input<typeof curveEvent>> & Pick<CurveEvent, 'kind'>): CurveEvent {
  return curveEvent.parse({ startTimeS: 0, endTimeS: 0, dropN: null, dropPercent: null, cycles: null, ...given })
}
