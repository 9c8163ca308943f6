import type { PullBlocks, SeriesStock } from '#contract/programme/pullProcedures.ts'
import type { Series } from '#contract/programme/study.ts'
import { type PullSource, studyPulls } from '../calendar/studyPulls.ts'
import { seriesKey } from '../study/cells.ts'
import { seriesOutlook } from './seriesOutlook.ts'

/** Glued blocks of one day and one age of a series; `ageMonths` null: its spares. */
export type SeriesCount = Series & PullBlocks & { gluedOn: string; ageMonths: number | null }

/**
 * What is left of each series of a study on a day, for each day of glue-up: its open ages with the blocks that they will have once
 * spares and blocks of closed pulls have filled what is short.
 */
export function studyStock(source: PullSource, counts: readonly SeriesCount[], today: string): SeriesStock[] {
  return [...stockBySeries(source, counts, today)]
}

/** The same, each series worked out as it is asked for: together they may take seconds. */
export function* stockBySeries(
  source: PullSource,
  counts: readonly SeriesCount[],
  today: string,
): Generator<SeriesStock> {
  const { cvPercent, confidence, power } = source.study.fields
  const states = new Map(studyPulls(source, today).map((pull) => [`${pull.gluedOn} ${pull.ageMonths}`, pull.state]))
  const bySeries = Map.groupBy(counts, (row) => `${row.gluedOn} ${seriesKey(row)}`)
  for (const rows of bySeries.values()) {
    const { adhesive, jointType, gapMm, exposure, gluedOn } = rows[0]!
    const cells = rows.flatMap(({ ageMonths, planned, waiting, broken, lost }) => {
      if (ageMonths === null) return []
      const state = states.get(`${gluedOn} ${ageMonths}`)
      return [{ ageMonths, planned, waiting, broken, lost, closed: state === 'missed' || state === 'skipped' }]
    })
    const spares = rows.find(({ ageMonths }) => ageMonths === null)?.waiting ?? 0
    const { ages, free } = seriesOutlook(cells, spares, { cvPercent, confidence, power })
    yield { adhesive, jointType, gapMm, exposure, gluedOn, free, ages }
  }
}
