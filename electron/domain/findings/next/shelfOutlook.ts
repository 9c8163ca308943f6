import type { ShelfSeries } from '#contract/findings/next.ts'
import { type PullSource, studyPulls } from '../../programme/calendar/studyPulls.ts'
import { type SeriesCount, studyStock } from '../../programme/stock/studyStock.ts'
import { seriesKey } from '../../programme/study/cells.ts'
import { bestMove, type PlannedPull, seenAt, sightOf, soonestMove } from '../ageing/shelf.ts'

/** A pull keeps so many blocks when others are moved: fewer show neither a mean nor a spread. */
const leastBlocks = 3
/** A move that sharpens the end by less is not worth the trouble. */
const worthwhile = 0.05

type Spread = { cvPercent: number; from: 'series' | 'results' | 'plan' }
type Terms = { today: string; changePercentPerYear: number; spreadOf(series: ShelfSeriesName): Spread | null }
export type ShelfSeriesName = Pick<ShelfSeries, 'adhesive' | 'jointType' | 'gapMm' | 'exposure'>

/**
 * What the pulls left of each series of a study can still show, for each day of glue-up: the smallest change after each pull to
 * come, when the change that is asked after is seen, and the move of blocks that shows it sooner or, where none does, sharpens the end. Pulls that
 * were made count with the blocks that were broken in them.
 * Checked: tests/domain/findings/next/shelfOutlook.spec.ts.
 */
export function shelfOutlook(source: PullSource, counts: readonly SeriesCount[], terms: Terms): ShelfSeries[] {
  const { study } = source
  const pulls = new Map(studyPulls(source, terms.today).map((pull) => [`${pull.gluedOn} ${pull.ageMonths}`, pull]))
  return studyStock(source, counts, terms.today).map(({ ages, free, gluedOn, ...series }) => {
    const rows = counts.filter((row) => row.gluedOn === gluedOn && seriesKey(row) === seriesKey(series))
    const spread = terms.spreadOf(series)
    const planned = rows
      .flatMap(({ ageMonths, broken }): PlannedPull[] => {
        if (ageMonths === null) return []
        const state = pulls.get(`${gluedOn} ${ageMonths}`)?.state
        const isDone = state === 'done' || state === 'missed' || state === 'skipped'
        const open = ages.find((age) => age.ageMonths === ageMonths)?.blocks ?? 0
        return [{ ageMonths, blocks: isDone ? broken : open, isDone }]
      })
      .sort((one, other) => one.ageMonths - other.ageMonths)
    const dayOf = (ageMonths: number) => pulls.get(`${gluedOn} ${ageMonths}`)!.dueOn
    return {
      ...series,
      ...{ studyId: study.studyId, studyTitle: study.fields.title, gluedOn, free },
      waiting: rows.reduce((sum, { waiting }) => sum + waiting, 0),
      ...{ cvPercent: spread?.cvPercent ?? null, cvFrom: spread?.from ?? null },
      ...(spread === null
        ? { sights: [], seen: null, move: null }
        : whatIsSeen(planned, spread.cvPercent, { ...study.fields, ...terms, dayOf })),
    }
  })
}

type Asked = { confidence: number; power: number; changePercentPerYear: number; dayOf(ageMonths: number): string }

function whatIsSeen(
  pulls: readonly PlannedPull[],
  cvPercent: number,
  { confidence, power, changePercentPerYear: percentPerYear, dayOf }: Asked,
): Pick<ShelfSeries, 'sights' | 'seen' | 'move'> {
  const certainty = { confidence, power }
  const isDone = (age: number) => pulls.find(({ ageMonths }) => ageMonths === age)!.isDone
  const sights = sightOf(pulls, cvPercent, certainty)
    .filter(({ ageMonths }) => !isDone(ageMonths))
    .map((sight) => ({ ...sight, day: dayOf(sight.ageMonths) }))
  const age = seenAt(pulls, cvPercent, certainty, percentPerYear)
  const seen = age === null ? null : { ageMonths: age, day: dayOf(age), isDone: isDone(age) }
  if (seen?.isDone === true) return { sights, seen, move: null }
  const sooner = soonestMove(pulls, cvPercent, certainty, { least: leastBlocks, percentPerYear })
  if (sooner !== null) return { sights, seen, move: { ...sooner, seenOn: dayOf(sooner.seenMonths) } }
  const sharper = bestMove(pulls, cvPercent, certainty, leastBlocks)
  const gains = sharper !== null && sharper.afterPercentPerYear < (1 - worthwhile) * sharper.beforePercentPerYear
  return { sights, seen, move: gains && seen === null ? { ...sharper, seenMonths: null, seenOn: null } : null }
}
