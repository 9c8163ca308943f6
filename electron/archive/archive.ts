import type { CaptureSession } from '#contract/bench/session.ts'
import type { Assessment } from '#contract/breaks/assessment.ts'
import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import type { BreakEnd, BreakHeader, Ending } from '#contract/breaks/capture.ts'
import type { RawCurve, SampleBlock } from '#contract/breaks/curve.ts'
import type { Decision, NewDecision } from '#contract/breaks/decision.ts'
import type { Evaluation, NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationDecision } from '#contract/calibration/calibrationRecords.ts'
import type { BrokenOffRoutine } from '#contract/calibration/calibrationRoutine.ts'
import type { CheckWeightReading } from '#contract/calibration/checkWeight.ts'
import type { KeptWeights, WeightEntry } from '#contract/calibration/weight.ts'
import type { ArchiveInfo, VerifyReport } from '#contract/keeping/archive.ts'
import type { ListQuery } from '#contract/listQuery.ts'
import type { ChangesPage, ChangesQuery } from '#contract/reevaluation/changes.ts'
import type { Reevaluation, ReevaluationEnd, ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'
import type { SpecimenRecord, SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Topic } from '#contract/topics.ts'
import type { BreakGroup } from './breaks/breakGroup.ts'
import type { BegunRoutine, TakenReading } from './calibration/calibrationRoutines.ts'
import type { DecidedReevaluation, NewReevaluationDecision } from './reevaluation/reevaluations.ts'

/** A record before the archive has given it its number. */
export type Unnumbered<R, Key extends keyof R> = Omit<R, Key>

/**
 * The archive as its users see it. Each call is one transaction and durable when it resolves; each rejects with a Trouble
 * that says what to do. Nothing finished is ever changed: there is no call that could.
 */
export type Archive = {
  info(): Promise<ArchiveInfo>
  close(): Promise<void>
  /**
   * Tells once for each call that wrote, after its commit and before its promise resolves, what it touched: each topic once.
   * A call that touches nothing that is read (samples of a running capture, rejected lines) is not told. The function
   * returned ends it.
   */
  onChange(listener: (topics: readonly Topic[]) => void): () => void

  preferences(): Promise<Preferences>
  setPreferences(change: Partial<Preferences>): Promise<Preferences>

  addSpecimen(fields: SpecimenFields, recordedAt: string, by: string): Promise<Specimen>
  /** All or none. */
  addSpecimens(fields: readonly SpecimenFields[], recordedAt: string, by: string): Promise<Specimen[]>
  correctSpecimen(
    specimenId: number,
    fields: SpecimenFields,
    recordedAt: string,
    by: string,
    reason: string,
  ): Promise<Specimen>
  listSpecimens(query: ListQuery): Promise<{ total: number; rows: SpecimenSummary[] }>
  specimen(specimenId: number): Promise<SpecimenRecord>
  /** The first specimens, in order of number (natural order), that have no break in force; `after` skips up to and including that one. */
  waitingSpecimens(after: number | null, limit: number): Promise<{ total: number; rows: SpecimenSummary[] }>

  beginSession(session: Unnumbered<CaptureSession, 'sessionId'>): Promise<CaptureSession>
  /** Keeps a line that was no reading; only the first thousand of a session are kept whole, all are counted. */
  keepRejectedLines(sessionId: number, recordedAt: string, count: number, example: Uint8Array): Promise<void>

  beginBreak(header: Unnumbered<BreakHeader, 'breakId'>): Promise<BreakHeader>
  appendSamples(breakId: number, block: SampleBlock): Promise<void>
  /** Seals the curve, enters it in the ledger and stores the evaluation that goes with it. */
  finishBreak(
    breakId: number,
    endedAt: string,
    ending: Ending,
    missingSamples: number,
    evaluation: Omit<NewEvaluation, 'breakId'>,
  ): Promise<BreakEnd>
  addEvaluation(evaluation: NewEvaluation): Promise<Evaluation>
  addAssessment(assessment: Unnumbered<Assessment, 'assessmentId'>): Promise<Assessment>
  addDecision(decision: NewDecision): Promise<Decision>

  listBreaks(query: ListQuery): Promise<{ total: number; rows: BreakSummary[] }>
  /** All that fit, in the order of `listBreaks`. */
  breakIds(query: Omit<ListQuery, 'offset' | 'limit'>): Promise<number[]>
  breakGroup(breakId: number): Promise<BreakGroup>
  break(breakId: number): Promise<BreakRecord>
  /** Breaks whose capture a crash cut short and which have no evaluation yet. */
  recoveredWithoutEvaluation(): Promise<number[]>
  readCurve(breakId: number): Promise<RawCurve>

  keptWeights(): Promise<KeptWeights>
  saveWeights(weights: readonly WeightEntry[], recordedAt: string, by: string): Promise<KeptWeights>

  /** Resolves with the number of the routine. */
  beginRoutine(begun: BegunRoutine): Promise<number>
  /** `number` counts the readings of the routine from 0. */
  addRoutineReading(routineId: number, number: number, taken: TakenReading): Promise<void>
  breakOffRoutine(routineId: number, endedAt: string, reason: string): Promise<void>
  /** Routines that came to no calibration, oldest first; one that runs now is among them. */
  brokenOffRoutines(): Promise<BrokenOffRoutine[]>

  /** routineId null: the readings come from a file. */
  addCalibration(calibration: Unnumbered<Calibration, 'calibrationId'>, routineId: number | null): Promise<Calibration>
  /** Newest first. */
  calibrations(): Promise<Calibration[]>
  calibration(calibrationId: number): Promise<Calibration>
  addCalibrationDecision(
    decision: Unnumbered<CalibrationDecision, 'calibrationDecisionId'>,
  ): Promise<CalibrationDecision>
  /** Oldest first; the last says which calibration is in force. */
  calibrationDecisions(): Promise<CalibrationDecision[]>
  addCheckWeight(check: Unnumbered<CheckWeightReading, 'checkId'>): Promise<CheckWeightReading>
  /** Oldest first. */
  checkWeights(calibrationId: number): Promise<CheckWeightReading[]>

  beginReevaluation(begun: Unnumbered<Reevaluation, 'reevaluationId'>): Promise<ReevaluationSummary>
  /** Some results of a running re-evaluation; none is in force until all are adopted. */
  addReevaluated(reevaluationId: number, made: readonly NewEvaluation[]): Promise<void>
  endReevaluation(end: ReevaluationEnd): Promise<ReevaluationSummary>
  /** Puts all its results in force, or takes them out again. */
  decideReevaluation(decision: NewReevaluationDecision): Promise<DecidedReevaluation>
  /** Newest first. */
  reevaluations(): Promise<ReevaluationSummary[]>
  reevaluation(reevaluationId: number): Promise<ReevaluationSummary>
  reevaluationChanges(query: ChangesQuery): Promise<ChangesPage>

  verify(onProgress: (progress: Progress) => void, signal: AbortSignal): Promise<VerifyReport>
}
