// Held by tests/archive/specimens/specimens.spec.ts.
import { leftOut } from '#contract/keeping/unreadable.ts'
import type { ListQuery } from '#contract/listQuery.ts'
import type { Specimen } from '#contract/specimens/specimen.ts'
import { type SpecimenRecord, type SpecimenSummary, specimenSummary } from '#contract/specimens/specimenRecord.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Row } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { openSession, type SessionMember, sessionMembers } from '../lists/breakingQueue.ts'
import { resultsOf, timesBroken as timesBrokenText } from '../lists/countsOfSpecimen.ts'
import { readableBreaks, specimensThatFit, specimensThatWait } from '../lists/lists.ts'
import { type ReadableRows, readableRecords, readableRows } from '../lists/readableRows.ts'
import { breaksOfSpecimen, readBreakSummary } from '../lists/summaries.ts'
import { withdrawnBecause } from '../lists/withdrawn.ts'
import { specimenKind } from './specimens.ts'
import { typedResultSummaryOf, typedResultsOf } from './typedResults.ts'

type Known = 'named' | 'ageMonths' | 'typedResultInForce' | 'withdrawn' | 'results' | 'timesBroken'
type Newest = Specimen & Pick<SpecimenSummary, Known>
type Found = {
  named: string
  age_months: number | null
  results: number
  times_broken: number
  withdrawn: string | null
}
type InForce = { break_in_force: number | null; typed_result_in_force: number | null }

const nameColumns: Readonly<Record<keyof SpecimenSummary['named'], string>> = {
  adhesive: 'adhesive',
  lot: 'lot',
  wood: 'wood',
  board: 'board',
  jointType: 'joint_type',
  exposure: 'exposure',
  place: 'place',
}

/** What a specimen `s` with its newest revision `r` is made of, in SQL, as JSON under the names that the catalogue has for it. */
const namedJson = `json_object(${Object.entries(nameColumns)
  .map(([key, column]) => `'${key}', coalesce(${nameInForce(`s.${column}_id`, `r.${column}`)}, '')`)
  .join(', ')})`

/** The newest revision of a specimen, how often it broke, its result without a curve in force, and the number of its break in force. */
function newestOf(database: Database, specimenId: number): { newest: Newest; inForceId: number | null } {
  const row = prepared<Row & InForce & Found>(
    database,
    `SELECT r.*, ${namedJson} AS named, s.age_months, s.break_in_force, s.typed_result_in_force, ${resultsOf('s.specimen_id')} AS results, ${timesBrokenText('s.specimen_id')} AS times_broken,
       ${withdrawnBecause('s.specimen_id')} AS withdrawn
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.specimen_id = ?`,
  ).get(specimenId)
  if (row === undefined) throw notFound('specimen', specimenId)
  const {
    break_in_force: inForceId,
    typed_result_in_force: typedId,
    results,
    times_broken: timesBroken,
    age_months: ageMonths,
    named,
    withdrawn,
  } = row
  const typedResultInForce = typedId === null ? null : typedResultSummaryOf(database, typedId)
  const revision = specimenKind.parse(specimenKind.contentOf(row))
  const known = { named: JSON.parse(named), ageMonths, typedResultInForce, withdrawn, results, timesBroken }
  return { newest: { ...revision, ...known }, inForceId }
}

/** One specimen as lists show it. */
function readSpecimenSummary(database: Database, specimenId: number): SpecimenSummary {
  const { newest, inForceId } = newestOf(database, specimenId)
  return { ...newest, breakInForce: inForceId === null ? null : readBreakSummary(database, inForceId).summary }
}

/** A specimen with all of its history that can be read. */
export function specimen(database: Database, specimenId: number): SpecimenRecord {
  const { newest, inForceId } = newestOf(database, specimenId)
  const breaks = readableBreaks(database, breaksOfSpecimen(database, specimenId))
  const revisions = readableRecords(database, specimenKind, 'WHERE specimen_id = ? ORDER BY revision', specimenId)
  return {
    current: { ...newest, breakInForce: breaks.rows.find(({ breakId }) => breakId === inForceId) ?? null },
    revisions: revisions.rows,
    breaks: breaks.rows,
    typedResults: typedResultsOf(database, specimenId),
    ...leftOut(revisions, breaks),
  }
}

type SpecimenPage = { total: number } & ReadableRows<SpecimenSummary>

function summariesOf(database: Database, ids: readonly number[]): ReadableRows<SpecimenSummary> {
  return readableRows('specimen', ids, (specimenId) => specimenSummary.parse(readSpecimenSummary(database, specimenId)))
}

/** One page of the specimens that fit, and how many fit in all. */
export function listSpecimens(database: Database, query: ListQuery): SpecimenPage {
  const { total, ids } = specimensThatFit(database, query)
  return { total, ...summariesOf(database, ids) }
}

/**
 * The first specimens, in order of number (natural order), that never broke; `after` skips up to and including that one.
 * `invented` false: none of the demo study, which no real press can break. `total` counts all that wait.
 */
export function waitingSpecimens(
  database: Database,
  after: number | null,
  limit: number,
  invented = true,
): SpecimenPage {
  const { total, ids } = specimensThatWait(database, after, limit, invented)
  return { total, ...summariesOf(database, ids) }
}

/** How far the breaking session is whose specimens come one after the other; null: there is none. */
type QueueSession =
  | ({ breakingSessionId: number; title: string } & Record<'specimens' | 'broken' | 'skipped' | 'withdrawn', number>)
  | null

/**
 * What comes to the press, one after the other: of the breaking session that is open what waits, in its order; without one all
 * that wait, as `waitingSpecimens` says, which names the other arguments too.
 */
export function pressQueue(
  database: Database,
  after: number | null,
  limit: number,
  invented = true,
): SpecimenPage & { session: QueueSession } {
  const session = openSession(database)
  if (session === null) return { session, ...waitingSpecimens(database, after, limit, invented) }
  const members = sessionMembers(database, session.breakingSessionId)
  const count = (state: SessionMember['state']) => members.filter((one) => one.state === state).length
  const place = members.findIndex(({ specimenId }) => specimenId === after)
  const next = members.slice(place + 1).filter(({ state }) => state === 'waiting')
  const far = { broken: count('broken'), skipped: count('skipped'), withdrawn: count('withdrawn') }
  return {
    session: { ...session, specimens: members.length, ...far },
    total: count('waiting'),
    ...summariesOf(
      database,
      next.slice(0, limit).map(({ specimenId }) => specimenId),
    ),
  }
}
