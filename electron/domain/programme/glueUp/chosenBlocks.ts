import type { BlockToGlue } from '#contract/programme/glueUpProcedures.ts'
import type { Series } from '#contract/programme/study.ts'
import { seriesKey } from '../study/cells.ts'

/** Blocks that differ in nothing but their age, to be glued. */
export type SeriesToGlue = Series & { readonly key: string; readonly blocks: readonly BlockToGlue[] }

/** Blocks by series, in the order in which each series comes first. */
export function seriesToGlue(blocks: readonly BlockToGlue[]): SeriesToGlue[] {
  return [...Map.groupBy(blocks, seriesKey)].map(([key, of]) => {
    const { adhesive, jointType, gapMm, exposure } = of[0]!
    return { ...{ key, adhesive, jointType, gapMm, exposure }, blocks: of }
  })
}

/** The ages of blocks, rising, spares (null) last. */
export function agesToGlue(blocks: readonly BlockToGlue[]): (number | null)[] {
  return [...new Set(blocks.map(({ ageMonths }) => ageMonths))].sort(byAge)
}

/** What is glued now: how many blocks of each series (null: all), and of which ages. */
export type ChosenBlocks = {
  readonly series: ReadonlyMap<string, number | null>
  readonly ages: ReadonlySet<number | null>
}

/**
 * The blocks that are glued now, in the order of their short numbers. Where not all of a series are, its youngest ages come first,
 * so that a day's work fills whole groups.
 */
export function chosenBlocks(blocks: readonly BlockToGlue[], { series, ages }: ChosenBlocks): BlockToGlue[] {
  const places = new Map(blocks.map(({ blockId }, at) => [blockId, at]))
  return seriesToGlue(blocks)
    .filter(({ key }) => series.has(key))
    .flatMap(({ key, blocks: of }) => {
      const ofAges = of.filter(({ ageMonths }) => ages.has(ageMonths))
      const count = series.get(key) ?? null
      return count === null ? ofAges : ofAges.toSorted((a, b) => byAge(a.ageMonths, b.ageMonths)).slice(0, count)
    })
    .sort((a, b) => places.get(a.blockId)! - places.get(b.blockId)!)
}

const byAge = (a: number | null, b: number | null) =>
  (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY) || 0
