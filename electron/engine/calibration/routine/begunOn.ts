import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import { keptSoFar } from '#domain/calibration/calibrationRows.ts'
import type { Bench } from '../../bench/bench.ts'

/** The device that a calibration was begun on: what is connected later does not matter to its readings. */
export type BegunOn = { source: string; device: Calibration['device']; readingUnit: ReadingUnit }

/** The device that is connected now. Throws Trouble `not-connected`. */
export function deviceNow(bench: Pick<Bench, 'device' | 'readingUnit'>): BegunOn {
  const { label, kind } = bench.device()
  return { source: label, device: kind, readingUnit: bench.readingUnit() ?? 'counts' }
}

/** Throws Trouble `conflict` when another device is connected than the calibration was begun on, `not-connected` when none is. */
export function refuseOtherDevice(bench: Pick<Bench, 'device' | 'readingUnit'>, begun: BegunOn): void {
  if (bench.device().label === begun.source && bench.readingUnit() === begun.readingUnit) return
  throw new Trouble(
    'conflict',
    `This calibration was begun on ${begun.source}, and another amplifier is connected now.`,
    `Connect ${begun.source} again, or stop this calibration early. ${keptSoFar}`,
  )
}
