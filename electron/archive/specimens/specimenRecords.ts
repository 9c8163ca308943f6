// Held by tests/archive/specimens/specimens.spec.ts.
import { leftOut } from '#contract/keeping/unreadable.ts'
import type { ListQuery } from '#contract/listQuery.ts'
import {
  type PlaceInStudy,
  type SpecimenRecord,
  type SpecimenSummary,
  specimenSummary,
} from '#contract/specimens/specimenRecord.ts'
import { entryNameReader } from '../catalogue/names.ts'
import type { Row } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { openSession, type SessionMember, sessionMembers } from '../lists/breakingQueue.ts'
import { timesBroken } from '../lists/countsOfSpecimen.ts'
import { readableBreaks, specimensThatFit, specimensThatWait } from '../lists/lists.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { type ReadableRows, readableRecords, readableRows } from '../lists/readableRows.ts'
import { studyTitles } from '../lists/studyTitles.ts'
import { breakSummaries, breaksOfSpecimen } from '../lists/summaries.ts'
import { withdrawnBecause } from '../lists/withdrawn.ts'
import { specimenKind } from './specimens.ts'
import { typedResultSummaries, typedResultsOf } from './typedResults.ts'

type NamedKey = keyof SpecimenSummary['named']

const nameColumns: Readonly<Record<NamedKey, string>> = {
  adhesive: 'adhesive',
  lot: 'lot',
  wood: 'wood',
  board: 'board',
  jointType: 'joint_type',
  exposure: 'exposure',
  place: 'place',
}
const names = Object.entries(nameColumns) as [NamedKey, string][]

/** Numbers are counted where the row does not say already that there are none. */
const someSpecimens = `
  SELECT r.*, ${names.map(([, column]) => `s.${column}_id`).join(', ')}, s.study_id, s.age_months, s.break_in_force, s.typed_result_in_force,
    s.results, CASE s.standing WHEN 'waiting' THEN 0 ELSE ${timesBroken('s.specimen_id')} END AS times_broken,
    CASE s.withdrawn WHEN 1 THEN ${withdrawnBecause('s.specimen_id')} END AS withdrawn
  FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
  WHERE s.specimen_id IN (SELECT value FROM json_each(?))`

type Found = Row & {
  specimen_id: number
  study_id: number | null
  age_months: number | null
  break_in_force: number | null
  typed_result_in_force: number | null
  results: number
  times_broken: number
  withdrawn: string | null
}

function rowsOf(database: Database, specimenIds: readonly number[]): Found[] {
  return prepared<Found>(database, someSpecimens).all(JSON.stringify(specimenIds))
}

/** Makes the line of a list of each of some rows; what lies in other tables is looked up for all of them at once. */
function summaryReader(database: Database, rows: readonly Found[]): (row: Found) => SpecimenSummary {
  const readName = entryNameReader(database)
  const titles = studyTitles(database)
  const readBreak = breakSummaries(
    database,
    rows.flatMap((row) => row.break_in_force ?? []),
  )
  const readTyped = typedResultSummaries(
    database,
    rows.flatMap((row) => row.typed_result_in_force ?? []),
  )
  return (row) => {
    const { break_in_force: breakId, typed_result_in_force: typedId } = row
    return specimenSummary.parse({
      ...specimenKind.contentOf(row),
      named: Object.fromEntries(
        names.map(([key, column]) => [key, readName(row[`${column}_id`] as number | null) ?? row[column] ?? '']),
      ),
      study: titles.get(row.study_id) ?? null,
      ageMonths: row.age_months,
      breakInForce: breakId === null ? null : readBreak(breakId).summary,
      typedResultInForce: typedId === null ? null : readTyped(typedId),
      withdrawn: row.withdrawn,
      results: row.results,
      timesBroken: row.times_broken,
    })
  }
}

/** A specimen with all of its history that can be read. */
export function specimen(database: Database, specimenId: number): SpecimenRecord {
  const [row] = rowsOf(database, [specimenId])
  if (row === undefined) throw notFound('specimen', specimenId)
  const breaks = readableBreaks(database, breaksOfSpecimen(database, specimenId))
  const revisions = readableRecords(database, specimenKind, 'WHERE specimen_id = ? ORDER BY revision', specimenId)
  const inForce = breaks.rows.find(({ breakId }) => breakId === row.break_in_force) ?? null
  const withoutBreak = { ...row, break_in_force: null }
  return {
    current: { ...summaryReader(database, [withoutBreak])(withoutBreak), breakInForce: inForce },
    revisions: revisions.rows,
    breaks: breaks.rows,
    typedResults: typedResultsOf(database, specimenId),
    glued: placeInStudy(database, specimenId),
    ...leftOut(revisions, breaks),
  }
}

function placeInStudy(database: Database, specimenId: number): PlaceInStudy | null {
  const place = prepared<Omit<PlaceInStudy, 'studyTitle'>>(
    database,
    `SELECT g.glue_up_id AS glueUpId, json_extract(u.fields, '$.gluedOn') AS gluedOn, p.study_id AS studyId, p.age_months AS ageMonths
     FROM glued_block g JOIN ${glueUpsInForce} u ON u.glue_up_id = g.glue_up_id LEFT JOIN block p ON p.block_id = g.block_id
     WHERE g.specimen_id = ?`,
  ).get(specimenId)
  return place === undefined ? null : { ...place, studyTitle: studyTitles(database).get(place.studyId) ?? null }
}

type SpecimenPage = { total: number } & ReadableRows<SpecimenSummary>

function summariesOf(database: Database, ids: readonly number[]): ReadableRows<SpecimenSummary> {
  const rows = rowsOf(database, ids)
  const read = summaryReader(database, rows)
  const byId = new Map(rows.map((row) => [row.specimen_id, row]))
  return readableRows('specimen', ids, (specimenId) => {
    const row = byId.get(specimenId)
    if (row === undefined) throw notFound('specimen', specimenId)
    return read(row)
  })
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
