import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { InputOf, OutputOf, QuestionName } from '#contract/procedures.ts'
import { topicsRead } from './changes.ts'
import { coalesced } from './coalesced.ts'
import type { Host } from './hostConnection.ts'

export type AnswerSink<T> = {
  asking(): void
  answered(value: T): void
  failed(error: TroubleMessage): void
}

/**
 * Asks a question now, and again whenever records that it reads were written or the host was away. A change that comes while it
 * is being asked asks once more after that answer, so that no older answer comes last. The returned function ends it: what
 * comes later is heard by nobody.
 */
export function keepAnswer<N extends QuestionName>(
  { client, changes }: Pick<Host, 'client' | 'changes'>,
  name: N,
  input: InputOf<N>,
  sink: AnswerSink<OutputOf<N>>,
): () => void {
  let wanted = true
  const ask = coalesced(async () => {
    if (!wanted) return
    sink.asking()
    try {
      const value = await client.call(name, input)
      if (wanted) sink.answered(value)
    } catch (thrown) {
      if (wanted) sink.failed(troubleFrom(thrown))
    }
  })
  const end = changes.follow(topicsRead(name, input), ask)
  ask()
  return () => {
    wanted = false
    end()
  }
}
