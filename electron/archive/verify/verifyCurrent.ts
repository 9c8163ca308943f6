import type Database from 'better-sqlite3'
import { canonicalJson } from '../core/canonicalJson.ts'
import type { Report } from '../core/fault.ts'
import { type BreakCurrentRow, deriveBreak, deriveSpecimen, type SpecimenCurrentRow } from '../lists/current.ts'

/** Compares what lists show with what the records say, and finds records that no list would show. */
export function verifyCurrent(database: Database.Database, report: Report): void {
  const breaks = new Set<number>()
  for (const row of database.prepare<[], BreakCurrentRow>('SELECT * FROM break_current').iterate()) {
    breaks.add(row.break_id)
    if (canonicalJson(row) !== canonicalJson(deriveBreak(database, row.break_id)))
      report({ where: `break ${row.break_id}`, what: 'the list of breaks shows something else than its records' })
  }
  const specimens = new Set<number>()
  for (const row of database.prepare<[], SpecimenCurrentRow>('SELECT * FROM specimen_current').iterate()) {
    specimens.add(row.specimen_id)
    if (canonicalJson(row) !== canonicalJson(deriveSpecimen(database, row.specimen_id)))
      report({
        where: `specimen ${row.specimen_id}`,
        what: 'the list of specimens shows something else than its records',
      })
  }
  const allBreaks = database.prepare('SELECT break_id FROM break_header').pluck().all()
  for (const id of allBreaks as number[])
    if (!breaks.has(id)) report({ where: `break ${id}`, what: 'the list of breaks leaves it out' })
  const allSpecimens = database.prepare('SELECT DISTINCT specimen_id FROM specimen_revision').pluck().all()
  for (const id of allSpecimens as number[])
    if (!specimens.has(id)) report({ where: `specimen ${id}`, what: 'the list of specimens leaves it out' })
}
