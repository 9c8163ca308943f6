import { type InputOf, type ParsedInputOf, procedures, type QuestionName } from '#contract/procedures.ts'
import { isTouched, type Topic } from '#contract/topics.ts'

/** What was written, as far as the host said; `everything` after the host was away, when any of it may have been missed. */
export type Written = readonly Topic[] | 'everything'

/** Those who show what was read, and want to know when it says something else. */
export type Changes = {
  tell(written: Written): void
  /** Calls back, once for each change that touches what was read, until the returned function is called. */
  follow(read: readonly Topic[], call: () => void): () => void
}

/** Nobody follows yet. */
export function createChanges(): Changes {
  const followers = new Set<{ read: readonly Topic[]; call: () => void }>()
  return {
    tell(written) {
      for (const { read, call } of [...followers]) if (written === 'everything' || isTouched(read, written)) call()
    },
    follow(read, call) {
      const follower = { read, call }
      followers.add(follower)
      return () => followers.delete(follower)
    },
  }
}

/** What the answer to a question depends on; nothing, where the question itself is refused. */
export function topicsRead<N extends QuestionName>(name: N, input: InputOf<N>): readonly Topic[] {
  const parsed = procedures[name].input.safeParse(input)
  const reads = procedures[name].reads as (input: ParsedInputOf<N>) => readonly Topic[]
  return parsed.success ? reads(parsed.data as ParsedInputOf<N>) : []
}
