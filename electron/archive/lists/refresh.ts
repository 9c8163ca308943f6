import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { type BreakCurrentRow, deriveBreaks } from './deriveBreaks.ts'
import { deriveSpecimens, type SpecimenCurrentRow } from './deriveSpecimens.ts'

const breakColumns = [
  'break_id',
  'started_at',
  'specimen_id',
  'evaluation_id',
  'assessment_id',
  'set_aside',
  'outcome',
  'peak_n',
  'wood_failure_percent',
  'note_search',
  'set_aside_cause',
  'peak_decision_id',
] as const satisfies readonly (keyof BreakCurrentRow)[]

const specimenColumns = [
  'specimen_id',
  'revision_id',
  'number_folded',
  'number_key',
  'adhesive_key',
  'joint_type_key',
  'exposure_key',
  'adhesive_id',
  'lot_id',
  'wood_id',
  'board_id',
  'joint_type_id',
  'exposure_id',
  'place_id',
  'study_id',
  'glue_up_id',
  'pull_age_months',
  'age_months',
  'gap_mm',
  'standing',
  'withdrawn',
  'results',
  'area_mm2',
  'search',
  'figures',
  'demo',
  'break_in_force',
  'typed_result_in_force',
  'any_set_aside',
  'started_at',
  'peak_n',
  'strength_mpa',
  'wood_failure_percent',
] as const satisfies readonly (keyof SpecimenCurrentRow)[]

// Not INSERT OR REPLACE: that would silently push out another specimen that holds the same number, and every index with it.
const putText = (table: string, [key, ...others]: readonly string[]) =>
  `INSERT INTO ${table} (${[key, ...others].join(', ')})
   VALUES (${[key, ...others].map((name) => `@${name}`).join(', ')})
   ON CONFLICT (${key}) DO UPDATE SET ${others.map((name) => `${name} = excluded.${name}`).join(', ')}`

const putBreak = putText('break_current', breakColumns)
const putSpecimen = putText('specimen_current', specimenColumns)

/** Stores the current rows of some breaks in place of the ones there. */
export function putBreaks(database: Database, rows: readonly BreakCurrentRow[]): void {
  const put = prepared(database, putBreak)
  for (const row of rows) put.run(row)
}

/** Stores the current rows of some specimens in place of the ones there. */
export function putSpecimens(database: Database, rows: readonly SpecimenCurrentRow[]): void {
  const put = prepared(database, putSpecimen)
  for (const row of rows) put.run(row)
}

/** What a refreshing brought up to date. */
export type Refreshed = { breakIds: number[]; specimenIds: number[] }

/** Brings the current rows of some specimens up to date. Call it inside the transaction that changed a record. */
export function refreshSpecimens(database: Database, specimenIds: readonly number[]): void {
  if (specimenIds.length === 0) return
  putSpecimens(database, deriveSpecimens(database, specimenIds))
  for (const specimenId of specimenIds) touch(database, `specimen ${specimenId}`)
}

/** Brings the current rows of some breaks, and of every specimen that they touch, up to date. */
export function refreshBreaks(database: Database, breakIds: readonly number[]): Refreshed {
  const before = new Map(currentOf(database, breakIds).map((row) => [row.break_id, row]))
  const now = deriveBreaks(database, breakIds)
  putBreaks(database, now)
  const specimenIds = new Set<number>()
  for (const row of now) {
    const was = before.get(row.break_id)
    touchBreak(database, was, row)
    for (const specimenId of [was?.specimen_id ?? null, row.specimen_id])
      if (specimenId !== null) specimenIds.add(specimenId)
  }
  refreshSpecimens(database, [...specimenIds])
  touchBreaksOf(database, [...specimenIds])
  return { breakIds: now.map((row) => row.break_id), specimenIds: [...specimenIds] }
}

/** What a break counts as: all of its row but what was seen on its faces and noted of it. */
const resultColumns = [
  'specimen_id',
  'evaluation_id',
  'outcome',
  'peak_n',
  'peak_decision_id',
  'set_aside',
  'set_aside_cause',
] as const

function touchBreak(database: Database, before: BreakCurrentRow | undefined, now: BreakCurrentRow): void {
  const { break_id: breakId } = now
  touch(database, `break ${breakId}`)
  // A capture that has only begun has no result yet.
  const hasResult = before !== undefined || now.evaluation_id !== null
  if (hasResult && resultColumns.some((column) => before?.[column] !== now[column]))
    touch(database, `result ${breakId}`)
  if ((before?.wood_failure_percent ?? null) !== now.wood_failure_percent) touch(database, `face ${breakId}`)
  if ((before?.evaluation_id ?? null) !== now.evaluation_id) touch(database, `curve ${breakId}`)
}

/** Each break says how many results its specimen has. */
function touchBreaksOf(database: Database, specimenIds: readonly number[]): void {
  const breaks = prepared<{ break_id: number }>(
    database,
    'SELECT break_id FROM break_current WHERE specimen_id IN (SELECT value FROM json_each(?))',
  )
  for (const { break_id } of breaks.all(JSON.stringify(specimenIds))) touch(database, `break ${break_id}`)
}

/** The same for one break. */
export function refreshBreak(database: Database, breakId: number): Refreshed {
  return refreshBreaks(database, [breakId])
}

function currentOf(database: Database, breakIds: readonly number[]): BreakCurrentRow[] {
  return prepared<BreakCurrentRow>(
    database,
    'SELECT * FROM break_current WHERE break_id IN (SELECT value FROM json_each(?)) ORDER BY break_id',
  ).all(JSON.stringify(breakIds))
}
