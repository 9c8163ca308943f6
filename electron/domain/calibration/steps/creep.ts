import type { CreepResult } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'

/** When creep is first read after the load was put on, s (ISO 376, from memory). */
export const creepFromS = 30

/** A load left on the cell, and the reading of it early and late; in the unit of the device. */
export type HeldLoad = Omit<Extract<CreepResult, { kind: 'creep' }>, 'kind' | 'percent'>

function percentOf(loadN: number, fromReading: number, toReading: number, toForceN: (reading: number) => number) {
  return (100 * (toForceN(toReading) - toForceN(fromReading))) / loadN
}

/**
 * Creep in percent of the load: how the indicated force changes under a load that does not.
 *
 *   c = ( F(r_to) − F(r_from) ) / F_load · 100      usually from 30 s to 300 s
 *
 * `toForceN` gives the force of a reading, N. Throws RangeError for a load that is not positive.
 * Source: ISO 376 (from memory). Checked: tests/domain/calibration/steps/creep.spec.ts by hand.
 */
export function creepOf(held: HeldLoad, toForceN: (reading: number) => number): CreepResult {
  if (!(held.loadN > 0)) throw new RangeError('creepOf requires a load above 0')
  return { kind: 'creep', ...held, percent: percentOf(held.loadN, held.fromReading, held.toReading, toForceN) }
}

/**
 * Return to zero of every run that was read at zero before and after it, in percent of its highest force.
 *
 *   z = ( F(r_after) − F(r_before) ) / F_highest · 100      before: a zero point going up; after: one going down
 *
 * `toForceN` gives the force of a reading, N. A run without both zeros, or without load, is left out.
 * Source: ISO 7500-1 f0, ISO 376 f0 (definitions from memory). Checked: tests/domain/calibration/steps/creep.spec.ts by hand.
 */
export function zeroReturns(rows: readonly CalibrationRow[], toForceN: (reading: number) => number): CreepResult[] {
  return [...Map.groupBy(rows, (row) => row.run)].flatMap(([run, ofRun]) => {
    const before = ofRun.find((row) => row.forceN === 0 && row.direction === 'up')
    const after = ofRun.findLast((row) => row.forceN === 0 && row.direction === 'down')
    const loadN = Math.max(...ofRun.map((row) => row.forceN))
    if (before === undefined || after === undefined || !(loadN > 0)) return []
    const percent = percentOf(loadN, before.reading, after.reading, toForceN)
    return [{ kind: 'zero-return', run, loadN, fromReading: before.reading, toReading: after.reading, percent }]
  })
}

/**
 * Half-width of creep as a share of the force: the largest creep measured; null when none was.
 *
 * A break takes less time than the hold, so this is the cautious side. Return to zero is in the budget as the zero error.
 * Source: ISO 376 takes the relative creep as the half-width (from memory). Checked: tests/domain/calibration/steps/creep.spec.ts.
 */
export function creepShareOf(results: readonly CreepResult[]): number | null {
  const sizes = results.flatMap((one) => (one.kind === 'creep' ? [Math.abs(one.percent) / 100] : []))
  return sizes.length === 0 ? null : Math.max(...sizes)
}
