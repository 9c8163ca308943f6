import { countOf } from '../units/counts.ts'
import { writeCount, writeSignificant } from '../units/numbers.ts'

/** A group with its place by the mean, 1 the strongest, and the places that the data leave possible. */
export type RankedGroup = { name: string; rank: number; low: number; high: number; firstShare: number }

/** One group in its place: "epoxy E4: 2nd by its mean" would hide that the data leave 1 to 3. */
export function rankWords({ name, rank, low, high }: RankedGroup, groups: number): string {
  const between = low === high ? `place ${writeCount(low)} alone` : `places ${writeCount(low)} to ${writeCount(high)}`
  return `${name}: ${writeCount(rank)} of ${writeCount(groups)} by its mean, ${between} possible`
}

/** The same with how often it came first when the blocks were drawn again. */
export function rankReadingWords(group: RankedGroup, groups: number): string {
  return `${rankWords(group, groups)}; first in ${writeSignificant(100 * group.firstShare, 2)} % of the resamplings`
}

/** What the figure of the ranking shows. */
export function rankFigureWords(groups: readonly RankedGroup[]): string {
  if (groups.length === 0) return 'No group can be ranked.'
  const surely = groups.find(({ high }) => high === 1)
  const perhaps = groups.filter(({ low }) => low === 1).length
  const whole = groups.map((group) => `${rankReadingWords(group, groups.length)}.`).join(' ')
  if (surely !== undefined) return `${surely.name} alone can be the strongest. ${whole}`
  // Too seldom first by itself to be named is not too seldom together with others.
  return perhaps > 1
    ? `${writeCount(perhaps)} groups can be the strongest. ${whole}`
    : `None of ${countOf(groups.length, 'group')} is surely the strongest. ${whole}`
}
