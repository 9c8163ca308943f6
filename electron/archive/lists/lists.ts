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
  if (words.length === 0) return { ...filtered, quick: true }
  teachSearch(database)
  const titles = [...studyTitles(database)].map(([studyId, title]) => ({ studyId, title: folded(title) }))
  const searched = searchCondition(words, list, (word) =>
    titles.flatMap(({ studyId, title }) => (title.includes(word) ? studyId! : [])),
  )
  return {
    condition: `${filtered.condition} ${searched.condition}`,
    values: [...filtered.values, ...searched.values],
    quick: searched.quick,
  }
}

function orderBy(key: string, last: readonly string[], descending: boolean, mayBeMissing: boolean): string {
  const direction = descending ? 'DESC' : 'ASC'
  const keys = [
    `${key} ${direction}${mayBeMissing ? ' NULLS LAST' : ''}`,
    ...last.map((name) => `${name} ${direction}`),
  ]
  return `ORDER BY ${keys.join(', ')}`
}

/** The statement of the list of specimens; its plan is looked at by a test. */
export function specimenListText(query: Omit<ListQuery, 'offset' | 'limit'>, condition = ''): string {
  const byNumber = query.sort === 'number'
  const last = byNumber ? ['s.specimen_id'] : ['s.number_key', 's.specimen_id']
  return `SELECT s.specimen_id FROM specimen_current s
    WHERE ${specimenStatus[query.status]} ${condition}
    ${orderBy(specimenOrder[query.sort], last, query.descending, !byNumber)} LIMIT ? OFFSET ?`
}

function pageOf<Row>(rows: readonly Row[], { offset, limit }: Pick<ListQuery, 'offset' | 'limit'>): Row[] {
  return rows.slice(offset, offset + limit)
}

const countSpecimens = 'SELECT count(*) FROM specimen_current s WHERE'

type Numbers = { total: number; ids: number[] }

/** What a statement with one column gives. It is not kept: there are as many as there are words to look for. */
function numbersOf(database: Database, text: string, ...values: readonly (number | string | null)[]): number[] {
  return database
    .prepare<unknown[], number>(text)
    .pluck()
    .all(...values) as number[]
}

/** The numbers of all specimens that fit, in the order of the list. */
export function specimenIds(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>): number[] {
  const { condition, values } = searching(database, query, 'specimens')
  return numbersOf(database, specimenListText(query, condition), ...values, -1, 0)
}

/** The numbers of one page of the specimens that fit, and how many fit in all. */
export function specimensThatFit(database: Database, query: ListQuery): Numbers {
  const search = searching(database, query, 'specimens')
  // What a row shows is looked through once, not again for their number
  if (!search.quick) {
    const all = specimenIds(database, query)
    return { total: all.length, ids: pageOf(all, query) }
  }
  const [total] = numbersOf(
    database,
    `${countSpecimens} ${specimenStatus[query.status]} ${search.condition}`,
    ...search.values,
  )
  const text = specimenListText(query, search.condition)
  return { total: total!, ids: numbersOf(database, text, ...search.values, query.limit, query.offset) }
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

/** What follows SELECT in every statement about the breaks of a query: which of them fit, and in which order. */
function breaksThatFit(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>) {
  const { condition, values } = searching(database, query, 'breaks')
  const fits = `${breaksAndSpecimens} WHERE ${breakStatus[query.status]} ${condition}`
  return { values, fits, order: orderBy(breakOrder[query.sort], ['b.break_id'], query.descending, true) }
}

/** Some breaks as lists show them. */
export function readableBreaks(database: Database, breakIds: readonly number[]): ReadableRows<BreakSummary> {
  const read = breakSummaries(database, breakIds)
  return readableRows('break', breakIds, (breakId) => breakSummary.parse(read(breakId).summary))
}

/** One page of the breaks that fit, and how many fit in all. */
export function listBreaks(database: Database, query: ListQuery): { total: number } & ReadableRows<BreakRow> {
  const { values, fits, order } = breaksThatFit(database, query)
  if (values.length > 0) {
    const searched = breakIds(database, query)
    return { total: searched.length, ...readableBreakRows(database, pageOf(searched, query)) }
  }
  const [total] = numbersOf(database, `SELECT count(*) ${fits}`)
  const page = numbersOf(database, `SELECT b.break_id ${fits} ${order} LIMIT ? OFFSET ?`, query.limit, query.offset)
  return { total: total!, ...readableBreakRows(database, page) }
}

/** The numbers of all breaks that fit, in the order in which `listBreaks` shows them. */
export function breakIds(database: Database, query: Omit<ListQuery, 'offset' | 'limit'>): number[] {
  const { values, fits, order } = breaksThatFit(database, query)
  return numbersOf(database, `SELECT b.break_id ${fits} ${order}`, ...values)
}
