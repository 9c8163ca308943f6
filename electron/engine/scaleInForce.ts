import type { BreakRecord } from '#contract/records/break.ts'
import type { ForceScale } from '#contract/records/force.ts'

/**
 * The scale and the zero (in its force) under which the result in force of a break was found; those of the capture while it
 * has no result. A curve shown or written beside that result must be under the same, so that its peak is the peak stated.
 */
export function scaleInForce({ header, evaluations }: Pick<BreakRecord, 'header' | 'evaluations'>): {
  scale: ForceScale
  tareOffset: number
} {
  const { scale, tareOffset } = evaluations.at(-1) ?? { scale: header.scale, tareOffset: header.tare?.offset ?? 0 }
  return { scale, tareOffset }
}
