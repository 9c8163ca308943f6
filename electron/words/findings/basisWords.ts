import type { FindingOf } from '#contract/findings/lines.ts'
import { countOf } from '../units/counts.ts'
import { writeCount } from '../units/numbers.ts'

type Summary = Pick<FindingOf<'group-summary'>, 'n' | 'excluded'>

/** How many blocks of how many groups count, and how many a person left out. */
export function blocksInGroups(summaries: readonly Summary[]): string {
  const sum = (of: 'n' | 'excluded') => summaries.reduce((total, one) => total + one[of], 0)
  const out = sum('excluded') === 0 ? '' : ` (${writeCount(sum('excluded'))} left out)`
  return `${countOf(sum('n'), 'block')}${out} in ${countOf(summaries.filter(({ n }) => n > 0).length, 'group')}`
}

/** Where all treatments of torn wood stand beside each other. */
export const eachTreatmentWords = 'under each treatment'

/** How each answer is found, and how surely. */
export const methodWords = {
  strongest: 'places by drawing the blocks of each group 10,000 times again, with 95 % intervals',
  'as-good':
    'differences by Dunnett, 95 % for all of them together and one spread for all groups; alike by two one-sided tests, each pair by itself at 95 %',
  overall: '95 % intervals by the delta method',
  'torn-wood': 'places by the means alone',
} as const

/** Where blocks of all ages are looked at. */
export const allAgesWords = 'of all ages'

/** How changes with age are found; `ofLines`: how the lines treat torn wood, where that is another way. */
export function changedMethod(ofLines: string | null): string {
  const shares = 'shares of the first strength with 95 % intervals by Fieller'
  return ofLines === null ? shares : `${shares}, lines with torn wood ${ofLines}`
}

/** What an answer rests on: blocks and groups, of which age, how torn wood is treated, by which method and how surely. */
export function basisSentence(
  summaries: readonly Summary[],
  { age, treatment, method }: { age: string; treatment: string; method: string },
): string {
  return `${blocksInGroups(summaries)}, ${age}, torn wood ${treatment}; ${method}.`
}
