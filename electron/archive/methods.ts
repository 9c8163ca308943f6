import type { Progress } from '#contract/tasks.ts'
import { beginSession, keepRejectedLines } from './bench/sessions.ts'
import { addAssessment } from './breaks/assessments.ts'
import { breakGroup } from './breaks/breakGroup.ts'
import { readBreak } from './breaks/breakRecords.ts'
import { appendSamples, beginBreak, finishBreak, readCurve } from './breaks/breaks.ts'
import { addDecision } from './breaks/decisions.ts'
import { addEvaluation } from './breaks/evaluations.ts'
import { recoveredWithoutEvaluation } from './breaks/recovery.ts'
import { addCalibrationDecision, calibrationDecisions } from './calibration/calibrationDecisions.ts'
import {
  addRoutineReading,
  beginRoutine,
  breakOffRoutine,
  brokenOffRoutines,
} from './calibration/calibrationRoutines.ts'
import { addCalibration, calibration, calibrations } from './calibration/calibrations.ts'
import { addCheckWeight, checkWeights } from './calibration/checkWeights.ts'
import { keptWeights, saveWeights } from './calibration/weightSets.ts'
import type { OpenArchive } from './core/openDatabase.ts'
import { info } from './keeping/info.ts'
import { breakIds, listBreaks, listSpecimens, waitingSpecimens } from './lists/lists.ts'
import { reevaluationChanges } from './reevaluation/reevaluationChanges.ts'
import {
  addReevaluated,
  beginReevaluation,
  decideReevaluation,
  endReevaluation,
  reevaluationOf,
  reevaluations,
} from './reevaluation/reevaluations.ts'
import { preferences, setPreferences } from './settings/preferences.ts'
import { specimen } from './specimens/specimenRecords.ts'
import { addSpecimen, addSpecimens, correctSpecimen } from './specimens/specimens.ts'
import { verify } from './verify/verify.ts'

/** The functions above take the bare connection first. */
function onDatabase<Arguments extends unknown[], Result>(
  work: (database: OpenArchive['database'], ...values: Arguments) => Result,
): (archive: OpenArchive, ...values: Arguments) => Result {
  return (archive, ...values) => work(archive.database, ...values)
}

/** Everything the worker can be asked for, by the name that `Archive` gives it. Adding a call is a line here and one there. */
export const methods = {
  info,
  preferences: onDatabase(preferences),
  setPreferences: onDatabase(setPreferences),
  addSpecimen: onDatabase(addSpecimen),
  addSpecimens: onDatabase(addSpecimens),
  correctSpecimen: onDatabase(correctSpecimen),
  listSpecimens: onDatabase(listSpecimens),
  specimen: onDatabase(specimen),
  waitingSpecimens: onDatabase(waitingSpecimens),
  beginSession: onDatabase(beginSession),
  keepRejectedLines: onDatabase(keepRejectedLines),
  beginBreak: onDatabase(beginBreak),
  appendSamples: onDatabase(appendSamples),
  finishBreak: onDatabase(finishBreak),
  addEvaluation: onDatabase(addEvaluation),
  addAssessment: onDatabase(addAssessment),
  addDecision: onDatabase(addDecision),
  listBreaks: onDatabase(listBreaks),
  breakIds: onDatabase(breakIds),
  breakGroup: onDatabase(breakGroup),
  break: onDatabase(readBreak),
  recoveredWithoutEvaluation: onDatabase(recoveredWithoutEvaluation),
  readCurve: onDatabase(readCurve),
  keptWeights: onDatabase(keptWeights),
  saveWeights: onDatabase(saveWeights),
  beginRoutine: onDatabase(beginRoutine),
  addRoutineReading: onDatabase(addRoutineReading),
  breakOffRoutine: onDatabase(breakOffRoutine),
  brokenOffRoutines: onDatabase(brokenOffRoutines),
  addCalibration: onDatabase(addCalibration),
  calibrations: onDatabase(calibrations),
  calibration: onDatabase(calibration),
  addCalibrationDecision: onDatabase(addCalibrationDecision),
  calibrationDecisions: onDatabase(calibrationDecisions),
  addCheckWeight: onDatabase(addCheckWeight),
  checkWeights: onDatabase(checkWeights),
  beginReevaluation: onDatabase(beginReevaluation),
  addReevaluated: onDatabase(addReevaluated),
  endReevaluation: onDatabase(endReevaluation),
  decideReevaluation: onDatabase(decideReevaluation),
  reevaluations: onDatabase(reevaluations),
  reevaluation: onDatabase(reevaluationOf),
  reevaluationChanges: onDatabase(reevaluationChanges),
} as const

/** Asked of a worker of its own, so that a long check never keeps samples from the disk. */
export const longMethods = {
  verify: (archive: OpenArchive, report: (progress: Progress) => void) => verify(archive.database, report),
} as const

export type Methods = typeof methods
export type MethodName = keyof Methods
