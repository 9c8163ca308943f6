import type { findingsProcedures } from '#contract/findings/procedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import type { FindingsThread } from './findingsThread.ts'

/** Statistics of results, one question after the other. */
export function findingsHandlers(
  { archive, clock, tasks, emit, program }: HandlerParts,
  thread: FindingsThread,
): HandlersOf<typeof findingsProcedures> {
  let before: Promise<unknown> = Promise.resolve()
  return {
    'findings.of': (question) => {
      const answer = before.then(() =>
        tasks.run('findings', async (signal) => {
          const opening = { path: (await archive.info()).path, program, instant: clock.instant() }
          return thread.ask({ opening, question }, signal, (done, total) =>
            emit('task.progress', { task: 'findings', done, total }),
          )
        }),
      )
      // What became of one question does not concern the next.
      before = answer.catch(() => {})
      return answer
    },
  }
}
