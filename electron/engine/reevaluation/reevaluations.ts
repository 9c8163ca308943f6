import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import { troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { Reevaluation, ReevaluationEnd, ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import type { LongTasks } from '../core/longTask.ts'
import { reevaluationThread } from './reevaluationThread.ts'

export type ReevaluationRequest = Pick<Reevaluation, 'breakIds' | 'calibrationId' | 'settings' | 'by'>

/** Breaks evaluated once more in the background, one order at a time. */
export type Reevaluations = {
  /** Resolves when it is recorded and runs; rejects with Trouble `conflict` while another one runs. */
  begin(request: ReevaluationRequest): Promise<ReevaluationSummary>
  /** Records the end of one that could not be recorded when it came; rejects with its Trouble while it still cannot be. */
  settle(): Promise<void>
  /** Ends a running one as cut short and waits until that is recorded. */
  close(): Promise<void>
}

export type ReevaluationParts = {
  archive: Archive
  clock: Clock
  tasks: LongTasks
  emit: Emit
  program: string
  evaluate?: typeof reevaluationThread
}

/** Keeps the thread that evaluates, and the archive that stores, at one pace. */
export function createReevaluations(parts: ReevaluationParts): Reevaluations {
  const { archive, clock, tasks, emit, program, evaluate = reevaluationThread } = parts
  let running: Promise<void> = Promise.resolve()
  let closing = false
  // On a full disk even the end finds no room. It is kept until there is some; else the re-evaluation would seem to run on.
  const owed: ReevaluationEnd[] = []
  let settling: Promise<void> | null = null

  async function recordOwed(): Promise<void> {
    for (let end = owed[0]; end !== undefined; end = owed[0]) {
      await archive.endReevaluation(end)
      owed.shift()
    }
  }

  /** Two at once would record the same end twice. */
  function settle(): Promise<void> {
    settling ??= recordOwed().finally(() => {
      settling = null
    })
    return settling
  }

  async function work(summary: ReevaluationSummary, request: ReevaluationRequest, signal: AbortSignal): Promise<void> {
    const { reevaluationId } = summary
    const total = request.breakIds.length
    const problems: ReevaluationEnd['problems'] = []
    let done = 0
    const tell = () => emit('task.progress', { task: 'reevaluation', done, total })
    let ending: ReevaluationEnd['ending'] = 'complete'
    let failure: unknown = null
    try {
      tell()
      const opening = { path: (await archive.info()).path, program, instant: clock.instant() }
      for await (const batch of evaluate(opening, request, signal)) {
        const madeAt = clock.instant()
        const evaluations = batch.flatMap(({ evaluation }) => (evaluation === null ? [] : [{ ...evaluation, madeAt }]))
        if (evaluations.length > 0) await archive.addReevaluated(reevaluationId, evaluations)
        for (const one of batch)
          if (one.evaluation === null) problems.push({ breakId: one.breakId, message: one.message })
        done += batch.length
        tell()
      }
    } catch (thrown) {
      ending = signal.aborted && !closing ? 'cancelled' : 'cut-short'
      failure = signal.aborted ? null : thrown
    }
    owed.push({ reevaluationId, endedAt: clock.instant(), ending, problems })
    await settle().catch((thrown: unknown) => {
      // What broke it off is told by the caller; what is told here is that a stop or a last result came to no record.
      if (failure === null) emit('trouble', troubleFrom(thrown))
    })
    if (failure !== null) throw failure
  }

  return {
    async begin(request) {
      const recorded = Promise.withResolvers<ReevaluationSummary>()
      const order = { ...request, breakIds: [...new Set(request.breakIds)] }
      let begun = false
      const attempt = tasks
        .run('reevaluation', async (signal) => {
          await settle()
          const begunAt = clock.instant()
          const summary = await archive.beginReevaluation({ ...order, begunAt, method: detectionMethod })
          begun = true
          recorded.resolve(summary)
          await work(summary, order, signal)
        })
        .catch((thrown: unknown) => {
          if (!begun) recorded.reject(thrown)
          else if (troubleFrom(thrown).code !== 'cancelled') emit('trouble', troubleFrom(thrown))
        })
      running = Promise.all([running, attempt]).then(() => undefined)
      return recorded.promise
    },
    settle,
    async close() {
      closing = true
      tasks.cancel('reevaluation')
      await running
      // What cannot be recorded now is ended by the next opening of the archive.
      await settle().catch(() => {})
    },
  }
}
