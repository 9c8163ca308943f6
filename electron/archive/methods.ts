import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { OverviewFilter } from '#contract/findings/overview.ts'
import type { Progress } from '#contract/tasks.ts'
import { pullsOfBreaks } from '#domain/programme/calendar/pullOfBreak.ts'
import { beginSession, keepRejectedLines, readSession } from './bench/sessions.ts'
import { addAssessment } from './breaks/assessments.ts'
import { breakGroup } from './breaks/breakGroup.ts'
import { readBreak } from './breaks/breakRecords.ts'
import { appendSamples, beginBreak, finishBreak, readCurve } from './breaks/breaks.ts'
import { addDecision } from './breaks/decisions.ts'
import { addEvaluation, storeEvaluation } from './breaks/evaluations.ts'
import { recoveredWithoutEvaluation } from './breaks/recovery.ts'
import { addCalibrationDecision, calibrationDecided, calibrationDecisions } from './calibration/calibrationDecisions.ts'
import {
  addRoutineReading,
  beginRoutine,
  breakOffRoutine,
  brokenOffRoutines,
} from './calibration/calibrationRoutines.ts'
import { addCalibration, calibration, calibrations } from './calibration/calibrations.ts'
import { addCheckWeight, checkWeights } from './calibration/checkWeights.ts'
import { keptWeights, saveWeights } from './calibration/weightSets.ts'
import type { Database } from './core/database.ts'
import {
  climateImports,
  climateMappings,
  climateReadings,
  climateStores,
  decideClimateImport,
  specimensOfStore,
  storeInForce,
  waitingInStore,
} from './findings/climate/climateLists.ts'
import { judgeReadings, storeReadings } from './findings/climate/storeReadings.ts'
import { keepFinding, keptFindings, newestKeptFinding, unlistFinding } from './findings/keptFindings.ts'
import { observations } from './findings/observations.ts'
import { observedVariation } from './findings/observedVariation.ts'
import { overview } from './findings/overviewBlocks.ts'
import { chainHead, chainIdentity, heldAgainst, settle } from './keeping/chainHead.ts'
import { info } from './keeping/info.ts'
import { breakIds, listBreaks, specimenIds } from './lists/lists.ts'
import { rebuildDerived } from './lists/rebuild.ts'
import { allocateStudy } from './programme/allocateStudy.ts'
import {
  addBreakingEvent,
  beginBreakingSession,
  breakingSession,
  breakingSessions,
} from './programme/breakingSessions.ts'
import {
  addCatalogueEntry,
  correctCatalogueEntry,
  mergeCatalogueEntries,
  takeBackCatalogueMerge,
} from './programme/catalogue.ts'
import { catalogueChoices, catalogueCounts, catalogueList, catalogueRecord } from './programme/catalogueLists.ts'
import { previewMerge } from './programme/catalogueUses.ts'
import { findNumber, numberedSpecimens } from './programme/findNumber.ts'
import { correctGlueUp, type NewGlueUpCorrection } from './programme/glueUp/correctGlueUp.ts'
import { glueUp, glueUpPlan, glueUpRow, glueUps, studiesToGlue } from './programme/glueUp/glueUpLists.ts'
import { addGlueUp, type NewGlueUp } from './programme/glueUp/glueUps.ts'
import { labelledBlocks } from './programme/labels.ts'
import { keepLabel, nextOwnNumbers } from './programme/ownNumbers.ts'
import { pullBlocks } from './programme/pullBlocks.ts'
import { addPullDecision } from './programme/pullDecisions.ts'
import { pullSources, seriesCounts } from './programme/pulls.ts'
import { addStudy, correctStudy, studies, study } from './programme/studies.ts'
import { reevaluationChanges } from './reevaluation/reevaluationChanges.ts'
import {
  addReevaluated,
  beginReevaluation,
  decideReevaluation,
  endReevaluation,
  reevaluationOf,
  reevaluations,
} from './reevaluation/reevaluations.ts'
import { arePreferencesSound, preferences, setPreferences } from './settings/preferences.ts'
import { judgeImport } from './specimens/import/judgeImport.ts'
import { type NewImport, storeImport } from './specimens/import/storeImport.ts'
import { moveSpecimens, reviseSpecimens, withdrawSpecimens } from './specimens/manySpecimens.ts'
import { addPicture, addWoodPicture, pictureContent, pictures } from './specimens/pictures.ts'
import { listSpecimens, pressQueue, specimen, waitingSpecimens } from './specimens/specimenRecords.ts'
import { addSpecimen, addSpecimens, correctSpecimen, storeSpecimens } from './specimens/specimens.ts'
import { addDialReadings, decideImport, decideTypedResult, importRuns } from './specimens/typedResults.ts'
import { verify } from './verify/verify.ts'

// Everything that an archive can be asked for; types and calls of its clients follow from these functions. Each takes the
// connection first.

const pullsIn = (database: Database) => pullsOfBreaks(pullSources(database, null).rows)

/** What only reads. */
export const reads = {
  info,
  chainHead,
  chainIdentity,
  heldAgainst,
  preferences,
  arePreferencesSound,
  listSpecimens,
  specimen,
  specimenIds,
  waitingSpecimens,
  pressQueue,
  pictures,
  pictureContent,
  judgeImport,
  importRuns,
  listBreaks,
  breakIds,
  breakGroup: (database: Database, breakId: number) => breakGroup(database, breakId, pullsIn(database)),
  observations: (database: Database) => observations(database, pullsIn(database)),
  // Of one moment, also where another connection writes meanwhile
  overview: (database: Database, filter: OverviewFilter) =>
    database.transaction(() => overview(database, filter, pullsIn(database)))(),
  variation: (database: Database) => observedVariation(database, pullsIn(database)),
  climateImports,
  climateMappings,
  climateStores,
  climateReadings,
  specimensOfStore,
  storeInForce,
  waitingInStore,
  judgeReadings,
  keptFindings,
  keptFinding: newestKeptFinding,
  break: (database: Database, breakId: number) => readBreak(database, breakId, readSession),
  readCurve,
  recoveredWithoutEvaluation,
  keptWeights,
  brokenOffRoutines,
  calibrations,
  calibration,
  calibrationDecisions,
  calibrationDecided,
  checkWeights,
  reevaluations,
  reevaluation: reevaluationOf,
  reevaluationChanges,
  studies,
  study,
  catalogueChoices,
  catalogueCounts,
  catalogueList,
  catalogueRecord,
  previewMerge,
  glueUps,
  glueUp,
  glueUpPlan,
  studiesToGlue,
  breakingSessions,
  breakingSession: (database: Database, breakingSessionId: number) =>
    breakingSession(database, breakingSessionId, specimen),
  pullSources,
  seriesCounts,
  pullBlocks,
  labelledBlocks,
  findNumber,
  numberedSpecimens,
} as const

/** What writes: each is one transaction, and durable when it returns (samples of a capture that runs: safe from the end of the program). Nothing finished is ever changed; there is no call that could. */
export const writes = {
  settle,
  setPreferences,
  addSpecimen,
  addSpecimens,
  correctSpecimen,
  addPicture,
  addWoodPicture,
  addDialReadings,
  decideTypedResult,
  decideImport,
  decideClimateImport,
  keepFinding,
  unlistFinding,
  beginSession,
  keepRejectedLines,
  beginBreak,
  appendSamples,
  finishBreak,
  addEvaluation,
  addAssessment,
  addDecision,
  saveWeights,
  beginRoutine,
  addRoutineReading,
  breakOffRoutine,
  addCalibration,
  addCalibrationDecision,
  addCheckWeight,
  beginReevaluation,
  addReevaluated: (database: Database, reevaluationId: number, made: readonly NewEvaluation[]) =>
    addReevaluated(database, reevaluationId, made, storeEvaluation),
  endReevaluation,
  decideReevaluation,
  addStudy,
  correctStudy,
  addCatalogueEntry,
  correctCatalogueEntry,
  mergeCatalogueEntries,
  takeBackCatalogueMerge,
  addGlueUp: (database: Database, glueUp: NewGlueUp) =>
    glueUpRow(database, addGlueUp(database, glueUp, storeSpecimens).glueUpId),
  correctGlueUp: (database: Database, made: NewGlueUpCorrection) => {
    correctGlueUp(database, made, reviseSpecimens)
    return glueUpRow(database, made.glueUpId)
  },
  beginBreakingSession,
  addBreakingEvent,
  addPullDecision,
} as const

/** What takes so long that it tells how far it is, and can be stopped. */
export const longMethods = {
  verify,
  rebuildDerived,
  allocateStudy,
  storeReadings,
  storeImport: (
    database: Database,
    onProgress: (progress: Progress) => void,
    isCancelled: () => boolean,
    made: NewImport,
  ) => storeImport(database, { next: nextOwnNumbers, keep: keepLabel }, made, onProgress, isCancelled),
  moveSpecimens,
  withdrawSpecimens,
} as const

export const methods = { ...reads, ...writes } as const
export type Methods = typeof methods
