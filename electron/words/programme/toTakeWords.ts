import type { PullGroup } from '#contract/programme/pullProcedures.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { gapInWords } from '../breaks/groupName.ts'
import { countOf } from '../units/counts.ts'
import { writeCount } from '../units/numbers.ts'

/** What a pull takes from the shelf: place by place, and what all its blocks have in common. */
export type ToTake = {
  places: { place: string; blocks: string }[]
  /** '': nothing but what the places say. */
  common: string
}

type Trait = 'jointType' | 'gapMm' | 'exposure'
const traits: readonly Trait[] = ['jointType', 'gapMm', 'exposure']

/**
 * The blocks of a pull, briefly: what is the same for all of them is said once, what differs at each place, and adhesives that have
 * as many blocks together. Places stand in the order in which people count, those without one last; `isGlued` false: there is no place yet.
 */
export function toTakeWords(
  groups: readonly PullGroup[],
  isGlued: boolean,
  lengthText: (mm: number) => string,
): ToTake {
  const said = (group: PullGroup, which: readonly Trait[]) =>
    which
      .map((trait) => (trait === 'gapMm' ? gapInWords(group.gapMm, lengthText) : group[trait]))
      .filter((words) => words !== '')
      .join(', ')
  const differ = traits.filter((trait) => groups.some((group) => group[trait] !== groups[0]![trait]))
  const places = [...Map.groupBy(groups, ({ place }) => place)].sort(([one], [other]) => inOrder(one, other))
  return {
    places: places.map(([place, here]) => ({
      place: place === '' ? (isGlued ? 'No place written' : 'Not glued yet') : place,
      blocks: [
        ...(here.length === 1 ? [] : [`${countOf(sumOf(here), 'block')}:`]),
        [...Map.groupBy(here, (group) => said(group, differ))]
          .map(([condition, alike]) => `${adhesivesWords(alike)}${condition === '' ? '' : ` (${condition})`}`)
          .join('; '),
      ].join(' '),
    })),
    common:
      groups.length === 0
        ? ''
        : said(
            groups[0]!,
            traits.filter((trait) => !differ.includes(trait)),
          ),
  }
}

/** "12 each of casein C1 and resorcinol R2, 11 of epoxy E4". */
function adhesivesWords(groups: readonly PullGroup[]): string {
  return [...Map.groupBy(groups, ({ blocks }) => blocks)]
    .map(([blocks, some]) => {
      const names = some.map(({ adhesive }) => adhesive)
      const [last, ...before] = names.toReversed()
      const listed = before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`
      return `${writeCount(blocks)} ${before.length === 0 ? '' : 'each '}of ${listed}`
    })
    .join(', ')
}

const sumOf = (groups: readonly PullGroup[]) => groups.reduce((sum, { blocks }) => sum + blocks, 0)

function inOrder(one: string, other: string): number {
  if (one === '' || other === '') return one === other ? 0 : one === '' ? 1 : -1
  const [a, b] = [naturalKey(one), naturalKey(other)]
  return a < b ? -1 : a > b ? 1 : 0
}
