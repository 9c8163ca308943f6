import type Database from 'better-sqlite3'
import { addCalibrationDecision } from '#archive/calibration/calibrationDecisions.ts'
import { addRoutineReading, beginRoutine, breakOffRoutine } from '#archive/calibration/calibrationRoutines.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { addCheckWeight } from '#archive/calibration/checkWeights.ts'
import { saveWeights } from '#archive/calibration/weightSets.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationRow, TakenReading } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'
import { morning } from './storedStudy.ts'

/** A straight cell of 0.01 N per count with its zero at 100 counts, read twice at three loads, a few counts off. */
export const rows: CalibrationRow[] = [0, 1].flatMap((run) =>
  [0, 200, 400, 600].map((forceN, index) => ({
    run: run + 1,
    direction: 'up' as const,
    forceN,
    reading: 100 + 100 * forceN + ([1, -2, 2, -1][index]! * (run === 0 ? 1 : -1) + index),
  })),
)

export const taken: TakenReading[] = rows.map(({ run, direction, forceN, reading }) => ({
  run,
  direction,
  weights: forceN === 0 ? [] : ['20 kg no. 1'],
  forceN,
  mean: reading,
  sd: 4.5,
  count: 160,
  takenAt: morning,
}))

/** The calibration that the rows above give. */
export function madeCalibration(change: Partial<Calibration> = {}): Omit<Calibration, 'calibrationId'> {
  return {
    name: 'May',
    madeAt: morning,
    by: 'bench',
    supersedes: null,
    dueOn: '2032-05-02',
    source: '/dev/ttyTEST at 115200 baud',
    device: 'serial',
    readingUnit: 'counts',
    circumstances: null,
    weights: [],
    readings: taken.map((reading) => ({ ...reading, standing: 'used', replacedBy: null })),
    rows,
    creep: [],
    assessment: calibrationOf(rows, { degree: 1 }),
    note: '',
    ...change,
  }
}

/** Stores one of every kind of record that calibrating makes; returns the calibration. */
export function storeCalibrations(database: Database.Database): Calibration {
  const plan = shopPlan()
  saveWeights(database, plan.weights, morning, 'bench')
  const begun = { begunAt: morning, by: 'bench', source: '/dev/ttyTEST at 115200 baud', plan }
  const brokenOff = beginRoutine(database, begun)
  addRoutineReading(database, brokenOff, 0, taken[0]!)
  breakOffRoutine(database, brokenOff, morning, 'the hanger touched the frame')
  const routineId = beginRoutine(database, begun)
  for (const [number, reading] of taken.entries()) addRoutineReading(database, routineId, number, reading)
  const calibration = addCalibration(database, madeCalibration(), routineId)
  const { calibrationId } = calibration
  addCalibrationDecision(database, { recordedAt: morning, by: 'bench', reason: 'made today', calibrationId })
  addCheckWeight(database, {
    calibrationId,
    takenAt: morning,
    by: 'bench',
    weight: '20 kg no. 1',
    expectedN: 196.25,
    indicatedN: 196.3,
    sdN: 0.05,
    count: 160,
  })
  return calibration
}
