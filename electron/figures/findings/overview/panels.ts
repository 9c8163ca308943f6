// Held by tests/figures/findings/overview/matrix.spec.ts.
import type { OverviewCell } from '#contract/findings/overview.ts'
import { conditionKey } from '#domain/findings/askedBlocks.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { conditionHeads } from '#words/findings/overviewWords.ts'
import type { Quantities } from '#words/units/quantities.ts'

/** What places a group on the page. */
export type Placed = Omit<OverviewCell, 'blocks'>

/** A condition, its ages side by side; `x` and `width` in pixels. */
export type Panel = { key: string; head: string; ages: readonly (number | null)[]; x: number; width: number }

/** Every condition with the ages that occur in it, in the order in which people count; and what all of them have in common. */
export function conditionsOf(
  groups: readonly Placed[],
  lengths: Pick<Quantities, 'length'>,
): { shared: string; conditions: Omit<Panel, 'x' | 'width'>[] } {
  const byKey = [...Map.groupBy(groups, conditionKey)].map(([key, members]) => ({ key, members, first: members[0]! }))
  byKey.sort((one, other) => compared(orderOf(one.first), orderOf(other.first)))
  const { shared, heads } = conditionHeads(
    byKey.map(({ first }) => first),
    lengths,
  )
  const conditions = byKey.map(({ key, members }, at) => {
    const ages = [...new Set(members.map(({ ageMonths }) => ageMonths))]
    return { key, head: heads[at]!, ages: ages.sort((one, other) => (one ?? last) - (other ?? last)) }
  })
  return { shared, conditions }
}

const last = Number.MAX_VALUE
const orderOf = ({ jointType, bondLineGapMm, exposure }: Placed) => [
  naturalKey(jointType),
  bondLineGapMm ?? last,
  naturalKey(exposure),
]

function compared(one: readonly (string | number)[], other: readonly (string | number)[]): number {
  const at = one.findIndex((value, place) => value !== other[place])
  return at === -1 ? 0 : one[at]! < other[at]! ? -1 : 1
}

/**
 * Panels from the left in as many lines as they need, each at least as wide as it needs and all of a line stretched alike, up
 * to twice; one that is too wide for a line alone is made narrower.
 */
export function panelLines(
  conditions: readonly Omit<Panel, 'x' | 'width'>[],
  needOf: (ages: number) => number,
  room: { from: number; widthPx: number; gapPx: number },
): Panel[][] {
  const lines: Omit<Panel, 'x' | 'width'>[][] = []
  let used = Number.POSITIVE_INFINITY
  for (const condition of conditions) {
    const need = needOf(condition.ages.length)
    if (used + room.gapPx + need > room.widthPx) {
      lines.push([])
      used = -room.gapPx
    }
    lines.at(-1)!.push(condition)
    used += room.gapPx + need
  }
  const stretchOf = (line: readonly Omit<Panel, 'x' | 'width'>[]) =>
    (room.widthPx - (line.length - 1) * room.gapPx) / line.reduce((sum, { ages }) => sum + needOf(ages.length), 0)
  const common = lines.map(stretchOf).reduce((least, stretch) => (stretch < 1 ? least : Math.min(least, stretch)), 2)
  return lines.map((line) => {
    let x = room.from
    const stretch = Math.min(common, stretchOf(line))
    return line.map((condition) => {
      const width = needOf(condition.ages.length) * stretch
      const panel = { ...condition, x, width }
      x += width + room.gapPx
      return panel
    })
  })
}
