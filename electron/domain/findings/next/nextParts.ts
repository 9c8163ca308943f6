import type { ShelfSeries, SuspiciousResult, UndecidedGroup } from '#contract/findings/next.ts'
import type { FindingsBlock, FindingsGroup } from '#contract/findings/procedures.ts'
import { momentsOf } from '../../numbers/moments.ts'
import type { PullSource } from '../../programme/calendar/studyPulls.ts'
import type { SeriesCount } from '../../programme/stock/studyStock.ts'
import { traitsKey } from '../../programme/study/plannedAges.ts'
import { pooledVariation } from '../../programme/study/pooledVariation.ts'
import { naturalKey } from '../../text/naturalOrder.ts'
import type { FindingUnit } from '../lines/findingUnit.ts'
import { pointedOut } from '../outliers.ts'
import { type ShelfSeriesName, shelfOutlook } from './shelfOutlook.ts'
import { undecidedGroups, type Wanted } from './undecidedGroups.ts'

/** A part of the answer to what is to be done next. */
export type NextPart =
  | { readonly of: 'shelf'; readonly found: ShelfSeries }
  | { readonly of: 'undecided'; readonly found: UndecidedGroup }
  /** How many groups stand beside a reference. */
  | { readonly of: 'compared'; readonly found: number }
  | { readonly of: 'suspicious'; readonly found: SuspiciousResult }

/** What the parts are made of: results that count, the groups that they are in, and the shelf of every study. */
export type NextData = {
  blocks: readonly FindingsBlock[]
  groups: readonly FindingsGroup[]
  shelves: readonly { source: PullSource; counts: readonly SeriesCount[] }[]
}
export type NextTerms = Wanted & {
  today: string
  changePercentPerYear: number
  references: readonly string[]
  /** Whether it is asked about an adhesive, rather than taken in as a reference alone. */
  isAsked(adhesive: string): boolean
}

/** A spread from fewer blocks than this beyond the first of each group is no better than that of all results. */
const leastDegrees = 8

/**
 * What there is to do, in parts that rest on nothing but what their keys say: the shelf of each study, the groups of each condition
 * and age that are undecided, and the results of each group that lie far out.
 * Checked: tests/domain/findings/next/nextParts.spec.ts.
 */
export function nextUnits({ blocks, groups, shelves }: NextData, terms: NextTerms): FindingUnit<NextPart>[] {
  const cells = [...Map.groupBy(blocks, ({ group, ageMonths }) => `${ageMonths} ${group}`).values()]
  const adhesives = new Map(groups.map(({ key, adhesive }) => [key, adhesive]))
  const asked = cells.filter((cell) => terms.isAsked(adhesives.get(cell[0]!.group)!))
  const spreadOf = spreadsOf(asked, groups)
  const ofShelf = shelves.map(({ source, counts }): FindingUnit<NextPart> => {
    const { today, changePercentPerYear } = terms
    const planned = source.study.fields.cvPercent
    const spread = (series: ShelfSeriesName) =>
      spreadOf(series) ?? (planned === null ? null : ({ cvPercent: planned, from: 'plan' } as const))
    const spreads = counts.map(spread)
    return {
      key: `shelf ${JSON.stringify([source, counts, spreads, today, changePercentPerYear])}`,
      lines: () =>
        shelfOutlook(source, counts, { today, changePercentPerYear, spreadOf: spread }).map((found) => ({
          of: 'shelf',
          found,
        })),
    }
  })
  return [...ofShelf, ...undecidedUnits(cells, groups, terms), ...asked.map((cell) => farUnit(cell, terms))]
}

const strengthsOf = (blocks: readonly FindingsBlock[]) => blocks.map(({ strengthMPa }) => strengthMPa)

/** The spread within the groups of a series, of all results where it has too few; null: nothing is known. */
function spreadsOf(cells: readonly FindingsBlock[][], groups: readonly FindingsGroup[]) {
  const keys = new Map(groups.map((group) => [group.key, traitsKey(group)]))
  const bySeries = Map.groupBy(cells, (cell) => keys.get(cell[0]!.group))
  const all = pooledVariation(cells.map(strengthsOf))
  return ({ gapMm, ...names }: ShelfSeriesName) => {
    const own = pooledVariation((bySeries.get(traitsKey({ ...names, bondLineGapMm: gapMm })) ?? []).map(strengthsOf))
    if (own !== null && own.blocks - own.groups >= leastDegrees)
      return { cvPercent: own.cvPercent, from: 'series' } as const
    return all === null ? null : ({ cvPercent: all.cvPercent, from: 'results' } as const)
  }
}

function undecidedUnits(
  cells: readonly FindingsBlock[][],
  groups: readonly FindingsGroup[],
  { references, isAsked, marginPercent, confidence, power }: NextTerms,
): FindingUnit<NextPart>[] {
  const traits = new Map(groups.map((group) => [group.key, group]))
  const wanted = { marginPercent, confidence, power }
  const isReference = new Set(references.map(naturalKey))
  const conditionOf = ([one]: FindingsBlock[]) =>
    JSON.stringify([traitsKey({ ...traits.get(one!.group)!, adhesive: '' }), one!.ageMonths])
  return [...Map.groupBy(cells, conditionOf).values()].flatMap((beside) => {
    const valued = beside.map((cell) => ({
      cell,
      group: cell[0]!.group,
      values: Float64Array.from(strengthsOf(cell)),
    }))
    const adhesiveOf = ({ group }: { group: string }) => traits.get(group)!.adhesive
    const held = valued.filter((one) => isReference.has(naturalKey(adhesiveOf(one))) && one.values.length > 1)
    const others = valued.filter((one) => !isReference.has(naturalKey(adhesiveOf(one))) && isAsked(adhesiveOf(one)))
    return held.map((reference) => ({
      key: `undecided ${JSON.stringify([wanted, reference, others])}`,
      lines: (): NextPart[] => [
        { of: 'compared', found: others.length },
        ...undecidedGroups(reference, others, reference.cell[0]!.ageMonths, wanted).map(
          (found): NextPart => ({ of: 'undecided', found }),
        ),
      ],
    }))
  })
}

function farUnit(cell: readonly FindingsBlock[], { confidence }: NextTerms): FindingUnit<NextPart> {
  return {
    key: `suspicious ${JSON.stringify([confidence, cell])}`,
    lines: () => {
      const values = strengthsOf(cell)
      const meanMPa = momentsOf(values).mean
      return [...pointedOut(values, 1 - confidence).keys()].map((place): NextPart => {
        const { group, ageMonths, specimenId, breakId, number, strengthMPa } = cell[place]!
        return { of: 'suspicious', found: { group, ageMonths, specimenId, breakId, number, strengthMPa, meanMPa } }
      })
    },
  }
}
