import type { ageingProcedures } from '#contract/findings/ageing.ts'
import type { keptFindingProcedures } from '#contract/findings/keptFindingProcedures.ts'
import type { nextProcedures } from '#contract/findings/next.ts'
import type { findingsProcedures } from '#contract/findings/procedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import type { AnswerOf, FindingsName, QuestionOf } from './findingsAnswers.ts'
import type { FindingsThread } from './findingsThread.ts'

/** Statistics of results, one question after the other. */
export function findingsHandlers(
  { archive, clock, tasks, emit, program }: HandlerParts,
  thread: FindingsThread,
): HandlersOf<
  typeof findingsProcedures & typeof ageingProcedures & typeof nextProcedures & typeof keptFindingProcedures
> {
  const ask =
    <Name extends FindingsName>(name: Name) =>
    (question: QuestionOf<Name>): Promise<AnswerOf<Name>> =>
      tasks.runInTurn('findings', async (signal) => {
        const opening = { path: (await archive.info()).path, program, instant: clock.instant() }
        return thread.ask({ opening, name, question }, signal, (done, total) =>
          emit('task.progress', { task: 'findings', done, total }),
        )
      })
  const restsOn = ask('findings.keep')
  return {
    'findings.of': ask('findings.of'),
    'findings.ageing': ask('findings.ageing'),
    'findings.next': ask('findings.next'),
    'findings.kept': ask('findings.kept'),
    'findings.changes': ask('findings.changes'),
    'findings.keep': async ({ keptFindingId, name, settings, said, by, reason }) => {
      const fields = { name, listed: true, settings, said, ...(await restsOn({ settings })) }
      const kept = await archive.keepFinding(keptFindingId, fields, clock.instant(), by, reason)
      return { keptFindingId: kept.keptFindingId, revision: kept.revision }
    },
    'findings.unlist': async ({ keptFindingId, by, reason }) => {
      await archive.unlistFinding(keptFindingId, clock.instant(), by, reason)
      return {}
    },
  }
}
