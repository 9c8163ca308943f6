import { type BreakRow, type BreakSummary, breakSummary } from '#contract/breaks/break.ts'
import type { ListQuery } from '#contract/listQuery.ts'
import { folded, searchWords } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readableBreakRows } from './breakRows.ts'
import { type ReadableRows, readableRows } from './readableRows.ts'
import { filterCondition } from './search/listFilter.ts'
import { type SearchCondition, searchCondition, teachSearch } from './search/listSearch.ts'
import { studyTitles } from './studyTitles.ts'
import { breakSummaries } from './summaries.ts'
import { waitsForPress } from './waits.ts'

type Sort = ListQuery['sort']
type Status = ListQuery['status']

// Values that are missing come last, whichever the direction.
const specimenOrder: Readonly<Record<Sort, string>> = {
  number: 's.number_key',
  adhesive: 's.adhesive_key',
  jointType: 's.joint_type_key',
  exposure: 's.exposure_key',
  startedAt: 's.started_at',
  peakN: 's.peak_n',
  strengthMPa: 's.strength_mpa',
  woodFailurePercent: 's.wood_failure_percent',
}

const breakOrder: Readonly<Record<Sort, string>> = {
  ...specimenOrder,
  startedAt: 'b.started_at',
  peakN: 'b.peak_n',
  // Nothing failed in an unloading.
  strengthMPa: "CASE WHEN b.outcome = 'break' THEN b.peak_n / s.area_mm2 END",
  woodFailurePercent: 'b.wood_failure_percent',
}

const noResult = 's.break_in_force IS NULL AND s.typed_result_in_force IS NULL'

/** waiting: no result in force. broken: one in force. set-aside: at least one result set aside, whatever else there is. */
const specimenStatus: Readonly<Record<Status, string>> = {
  all: '1',
  waiting: `${noResult} AND s.withdrawn = 0`,
  broken: `NOT (${noResult})`,
  'set-aside': 's.any_set_aside = 1',
  withdrawn: 's.withdrawn = 1',
}

/** waiting: no evaluation yet. broken: counts as a break. set-aside: not used in results. */
const breakStatus: Readonly<Record<Status, string>> = {
  all: '1',
  waiting: 'b.outcome IS NULL',
  broken: "b.outcome = 'break' AND b.set_aside IS NULL",
  'set-aside': 'b.set_aside IS NOT NULL',
  withdrawn: 's.withdrawn = 1',
}

/** What filter and search add to a statement, and the values for its places; nothing where nothing is looked for. */
function searching(
  database: Database,
  { text, filter }: Pick<ListQuery, 'text' | 'filter'>,
  list: 'specimens' | 'breaks',
): SearchCondition {
  const filtered = filterCondition(filter)
  const words = searchWords(text)
  if (words.length === 0) return filtered
  teachSearch(database)
  const titles = [...studyTitles(database)].map(([studyId, title]) => ({ studyId, title: folded(title) }))
  const searched = searchCondition(words, list, (word) =>
    titles.flatMap(({ studyId, title }) => (title.includes(word) ? studyId! : [])),
  )
  return {
    condition: `${filtered.condition} ${searched.condition}`,
    values: [...filtered.values, ...searched.values],
  }
}

/** Rows of a list that fit a query: the column of their numbers, what follows SELECT, and what they are ordered by. */
type Fitting = { id: string; rows: string; keys: readonly string[]; descending: boolean; mayBeMissing: boolean }

function orderBy({ keys, descending, mayBeMissing }: Omit<Fitting, 'id' | 'rows'>): string {
  const direction = descending ? 'DESC' : 'ASC'
  return `ORDER BY ${keys.map((key, at) => `${key} ${direction}${at === 0 && mayBeMissing ? ' NULLS LAST' : ''}`).join(', ')}`
}

function fittingSpecimens(
  { status, sort, descending }: Omit<ListQuery, 'offset' | 'limit'>,
  condition: string,
): Fitting {
  const byNumber = sort === 'number'
  return {
    id: 's.specimen_id',
    rows: `FROM specimen_current s WHERE ${specimenStatus[status]} ${condition}`,
    keys: [...(byNumber ? [] : [specimenOrder[sort]]), 's.number_key', 's.specimen_id'],
    descending,
    mayBeMissing: !byNumber,
  }
}

const listText = (fitting: Fitting) => `SELECT ${fitting.id} ${fitting.rows} ${orderBy(fitting)} LIMIT ? OFFSET ?`

/** The statement of the list of specimens; its plan is looked at by a test. */
export function specimenListText(query: Omit<ListQuery, 'offset' | 'limit'>, condition = ''): string {
  return listText(fittingSpecimens(query, condition))
}

const countSpecimens = 'SELECT count(*) FROM specimen_current s WHERE'

type Numbers = { total: number; ids: number[] }
type Page = Pick<ListQuery, 'offset' | 'limit'>

/** What a statement with one column gives. It is not kept: there are as many as there are words to look for. */
function numbersOf(database: Database, text: string, ...values: readonly (number | string | null)[]): number[] {
  return database
    .prepare<unknown[], number>(text)
    .pluck()
    .all(...values) as number[]
}

/** With more places for values SQLite takes the subqueries of a statement that looks once for nested too deep. */
const mostPlacesToLookOnce = 400

/** The numbers of one page of the rows that fit, and how many fit in all. */
function pageThatFits(
  database: Database,
  fitting: Fitting,
  { values, page }: { values: SearchCondition['values']; page: Page },
): Numbers {
  if (values.length > 0 && values.length <= mostPlacesToLookOnce) return lookOnce(database, fitting, values, page)
  const [total] = numbersOf(database, `SELECT count(*) ${fitting.rows}`, ...values)
  return { total: total!, ids: numbersOf(database, listText(fitting), ...values, page.limit, page.offset) }
}

/** Whether a row fits costs more than keeping those that do: each is looked at once, not again for their number. */
function lookOnce(
  database: Database,
  fitting: Fitting,
  values: SearchCondition['values'],
  { limit, offset }: Page,
): Numbers {
  const { id, rows, keys } = fitting
  const names = keys.map((_, at) => `key_${at}`)
  const kept = keys.map((key, at) => `${key} AS ${names[at]}`)
  const found = database
    .prepare<unknown[], { id: number | null; total: number | null }>(
      `WITH fits AS MATERIALIZED (SELECT ${[`${id} AS id`, ...kept].join(', ')} ${rows})
      SELECT id, NULL AS total FROM (SELECT id FROM fits ${orderBy({ ...fitting, keys: names })} LIMIT ? OFFSET ?)
      UNION ALL SELECT NULL, count(*) FROM fits`,
    )
    .all(...values, limit, offset)
  return {
    total: found.find(({ total }) => total !== null)!.total!,
    ids: found.flatMap((row) => row.id ?? []),
  }
}

/** The numbers of all specimens that fit, in the order of the list. */
export function specimenIds(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>): number[] {
  const { condition, values } = searching(database, query, 'specimens')
  return numbersOf(database, specimenListText(query, condition), ...values, -1, 0)
}

/** The numbers of one page of the specimens that fit, and how many fit in all. */
export function specimensThatFit(database: Database, query: ListQuery): Numbers {
  const { condition, values } = searching(database, query, 'specimens')
  return pageThatFits(database, fittingSpecimens(query, condition), { values, page: query })
}

const waits = `${waitsForPress('s')} AND s.demo <= ?`

/**
 * The numbers of specimens that never broke and that nobody withdrew, in order of number, from after one of them; `total` counts all that wait.
 * `invented` false: only those that somebody made.
 */
export function specimensThatWait(database: Database, after: number | null, limit: number, invented: boolean): Numbers {
  const [total] = numbersOf(database, `${countSpecimens} ${waits}`, Number(invented))
  const from = prepared<{ number_key: string }>(
    database,
    'SELECT number_key FROM specimen_current WHERE specimen_id = ?',
  ).get(after)
  const next = `SELECT s.specimen_id FROM specimen_current s
    WHERE ${waits} AND (s.number_key, s.specimen_id) > (?, ?) ORDER BY s.number_key, s.specimen_id LIMIT ?`
  const place = [from?.number_key ?? '', from === undefined ? 0 : after]
  return { total: total!, ids: numbersOf(database, next, Number(invented), ...place, limit) }
}

const breaksAndSpecimens = 'FROM break_current b LEFT JOIN specimen_current s ON s.specimen_id = b.specimen_id'

/** Which breaks fit, and the values for the places in their statements. */
function fittingBreaks(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>) {
  const { condition, values } = searching(database, query, 'breaks')
  const fitting: Fitting = {
    id: 'b.break_id',
    rows: `${breaksAndSpecimens} WHERE ${breakStatus[query.status]} ${condition}`,
    keys: [breakOrder[query.sort], 'b.break_id'],
    descending: query.descending,
    mayBeMissing: true,
  }
  return { values, fitting }
}

/** Some breaks as lists show them. */
export function readableBreaks(database: Database, breakIds: readonly number[]): ReadableRows<BreakSummary> {
  const read = breakSummaries(database, breakIds)
  return readableRows('break', breakIds, (breakId) => breakSummary.parse(read(breakId).summary))
}

/** One page of the breaks that fit, and how many fit in all. */
export function listBreaks(database: Database, query: ListQuery): { total: number } & ReadableRows<BreakRow> {
  const { values, fitting } = fittingBreaks(database, query)
  const { total, ids } = pageThatFits(database, fitting, { values, page: query })
  return { total, ...readableBreakRows(database, ids) }
}

/** The numbers of all breaks that fit, in the order in which `listBreaks` shows them. */
export function breakIds(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>): number[] {
  const { values, fitting } = fittingBreaks(database, query)
  return numbersOf(database, listText(fitting), ...values, -1, 0)
}
