import type { Progress } from '#contract/records/archive.ts'
import { addAssessment } from './assessments.ts'
import { breakGroup } from './breakGroup.ts'
import { readBreak } from './breakRecords.ts'
import { appendSamples, beginBreak, finishBreak, readCurve } from './breaks.ts'
import { addCalibrationDecision, calibrationDecisions } from './calibrationDecisions.ts'
import { addRoutineReading, beginRoutine, breakOffRoutine, brokenOffRoutines } from './calibrationRoutines.ts'
import { addCalibration, calibration, calibrations } from './calibrations.ts'
import { addCheckWeight, checkWeights } from './checkWeights.ts'
import { addDecision } from './decisions.ts'
import { addEvaluation } from './evaluations.ts'
import { info } from './info.ts'
import { breakIds, listBreaks, listSpecimens, waitingSpecimens } from './lists.ts'
import type { OpenArchive } from './openDatabase.ts'
import { preferences, setPreferences } from './preferences.ts'
import { recoveredWithoutEvaluation } from './recovery.ts'
import { reevaluationChanges } from './reevaluationChanges.ts'
import {
  addReevaluated,
  beginReevaluation,
  decideReevaluation,
  endReevaluation,
  reevaluationOf,
  reevaluations,
} from './reevaluations.ts'
import { beginSession, keepRejectedLines } from './sessions.ts'
import { specimen } from './specimenRecords.ts'
import { addSpecimen, addSpecimens, correctSpecimen } from './specimens.ts'
import { verify } from './verify.ts'
import { keptWeights, saveWeights } from './weightSets.ts'

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
