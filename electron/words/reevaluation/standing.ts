import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { ofWords } from '../units/counts.ts'

/** How a re-evaluation stands. taken-out: adopted once, and no longer in force. nothing: no break could be evaluated. */
export type Standing =
  | 'running'
  | 'waiting'
  | 'nothing'
  | 'adopted'
  | 'dropped'
  | 'taken-out'
  | 'cancelled'
  | 'cut-short'

/** Where a re-evaluation stands: what people decided, else how it ended. */
export function standingOf({
  end,
  decisions,
  evaluated,
}: Pick<ReevaluationSummary, 'end' | 'decisions' | 'evaluated'>): Standing {
  const newest = decisions.at(-1)
  if (newest?.kind === 'adopted') return 'adopted'
  if (newest !== undefined) return decisions.some(({ kind }) => kind === 'adopted') ? 'taken-out' : 'dropped'
  if (end === null) return 'running'
  if (end.ending !== 'complete') return end.ending
  return evaluated === 0 ? 'nothing' : 'waiting'
}

const words: Record<Exclude<Standing, 'running'>, string> = {
  waiting: 'waiting for your decision',
  nothing: 'nothing to decide',
  adopted: 'adopted',
  dropped: 'not adopted',
  'taken-out': 'taken out again',
  cancelled: 'cancelled',
  'cut-short': 'cut short',
}

/** The standing in a few words; a running one says how far it is. */
export function standingWords(
  summary: Pick<ReevaluationSummary, 'end' | 'decisions' | 'evaluated' | 'breaks'>,
): string {
  const standing = standingOf(summary)
  return standing === 'running' ? `running: ${ofWords(summary.evaluated, summary.breaks)}` : words[standing]
}
