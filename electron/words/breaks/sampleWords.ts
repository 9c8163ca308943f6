import type { BreakRecord } from '#contract/breaks/break.ts'
import type { PickedSample } from '#contract/breaks/decision.ts'
import { taredForce } from '#domain/calibration/scale/forceScale.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'
import { writeFixed, writeNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** A sample that a person named: its load under the scale in force, and its time. */
export function sampleWords(
  record: Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>,
  { reading, timeS }: PickedSample,
  force: Pick<Quantity, 'text'>,
): string {
  const { scale, tareOffset } = scaleInForce(record)
  const tared = taredForce(Float64Array.of(reading), scale, record.header.readingUnit, tareOffset)
  const value = tared.force[0]!
  const load = tared.unit === 'counts' ? `${writeNumber(value, 0)} counts` : force.text(value)
  return `${load} at ${writeFixed(timeS, 3)} s`
}
