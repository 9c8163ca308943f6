import { Trouble } from '#contract/errors.ts'
import type { VerifyReport } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Topic } from '#contract/topics.ts'
import type { Archive } from '../archive.ts'
import type { MethodName } from '../methods.ts'
import type { OpeningOptions } from './openDatabase.ts'
import { startThread } from './startThread.ts'
import { connectWorker, type WorkerConnection } from './workerProtocol.ts'

export type ArchiveOpening = {
  path: string
  /** Name and version of the program, noted in the archive when its format changes. */
  program: string
  /** write (default): the one program that may add records; creates the archive when there is none. read: looks only, beside a writer. */
  mode?: 'write' | 'read'
  /** The wall clock, ISO 8601 UTC. */
  clockInstant?: () => string
}

function startWorker(options: OpeningOptions, onTouched?: (topics: readonly Topic[]) => void): WorkerConnection {
  return connectWorker(startThread('archiveWorker', options), onTouched)
}

/** Opens an archive in a thread of its own. Rejects with a Trouble that says what stands in the way and what to do. */
export async function openArchive(opening: ArchiveOpening): Promise<Archive> {
  const { path, program, mode = 'write', clockInstant = () => new Date().toISOString() } = opening
  const options = { path, program, mode, instant: clockInstant() }
  const listeners = new Set<(topics: readonly Topic[]) => void>()
  const writer = startWorker(options, (topics) => {
    for (const listener of listeners) listener(topics)
  })
  await writer.ready
  // The compiler holds each line of `methods` against the type of the same name here.
  const ask =
    <Name extends MethodName>(name: Name) =>
    (...args: Parameters<Archive[Name]>) =>
      writer.call(name, args) as ReturnType<Archive[Name]>
  let closing: Promise<void> | undefined

  // A view would take its whole buffer along to the other thread, so samples cross as copies of their own.
  return {
    info: ask('info'),
    onChange(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    close() {
      closing ??= writer.call('close', []).then(() => undefined)
      return closing
    },
    preferences: ask('preferences'),
    setPreferences: ask('setPreferences'),
    addSpecimen: ask('addSpecimen'),
    addSpecimens: ask('addSpecimens'),
    correctSpecimen: ask('correctSpecimen'),
    listSpecimens: ask('listSpecimens'),
    specimen: ask('specimen'),
    waitingSpecimens: ask('waitingSpecimens'),
    beginSession: ask('beginSession'),
    keepRejectedLines: ask('keepRejectedLines'),
    beginBreak: ask('beginBreak'),
    appendSamples: (breakId, block) =>
      ask('appendSamples')(breakId, { timeUs: block.timeUs.slice(), readings: block.readings.slice() }),
    finishBreak: ask('finishBreak'),
    addEvaluation: ask('addEvaluation'),
    addAssessment: ask('addAssessment'),
    addDecision: ask('addDecision'),
    listBreaks: ask('listBreaks'),
    breakIds: ask('breakIds'),
    breakGroup: ask('breakGroup'),
    break: ask('break'),
    recoveredWithoutEvaluation: ask('recoveredWithoutEvaluation'),
    readCurve: ask('readCurve'),
    keptWeights: ask('keptWeights'),
    saveWeights: ask('saveWeights'),
    beginRoutine: ask('beginRoutine'),
    addRoutineReading: ask('addRoutineReading'),
    breakOffRoutine: ask('breakOffRoutine'),
    brokenOffRoutines: ask('brokenOffRoutines'),
    addCalibration: ask('addCalibration'),
    calibrations: ask('calibrations'),
    calibration: ask('calibration'),
    addCalibrationDecision: ask('addCalibrationDecision'),
    calibrationDecisions: ask('calibrationDecisions'),
    addCheckWeight: ask('addCheckWeight'),
    checkWeights: ask('checkWeights'),
    beginReevaluation: ask('beginReevaluation'),
    addReevaluated: ask('addReevaluated'),
    endReevaluation: ask('endReevaluation'),
    decideReevaluation: ask('decideReevaluation'),
    reevaluations: ask('reevaluations'),
    reevaluation: ask('reevaluation'),
    reevaluationChanges: ask('reevaluationChanges'),
    verify: (onProgress, signal) => verifyApart(options, onProgress, signal),
  }
}

/** Verifies in a second thread with a connection that only reads, so that a running capture is never kept waiting. */
async function verifyApart(
  options: OpeningOptions,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<VerifyReport> {
  const cancelled = new Trouble(
    'cancelled',
    'The check of the archive was stopped.',
    'Start it again when there is time.',
  )
  if (signal.aborted) throw cancelled
  const reader = startWorker({ ...options, mode: 'read' })
  const stop = () => void reader.stop(cancelled)
  signal.addEventListener('abort', stop)
  try {
    await reader.ready
    const report = await reader.call('verify', [], (progress) => onProgress(progress as Progress))
    return report as VerifyReport
  } finally {
    signal.removeEventListener('abort', stop)
    await reader.stop(cancelled)
  }
}
