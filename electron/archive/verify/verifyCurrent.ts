// Held by tests/archive/verify/verify.spec.ts.

import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { deriveCatalogue } from '../catalogue/deriveCatalogue.ts'
import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'
import { isDerivedHere } from '../lists/derivation.ts'
import { type BreakCurrentRow, deriveBreaks } from '../lists/deriveBreaks.ts'
import { deriveSpecimens, type SpecimenCurrentRow } from '../lists/deriveSpecimens.ts'
import { batchesOf } from '../lists/rebuild.ts'

type List<Row> = {
  noun: string
  list: string
  idOf(row: Row): number
  /** All numbers that have records, and all that have a row. */
  numbers: string
  current: string
  derive(database: Database, ids: readonly number[]): Row[]
}

const breaks: List<BreakCurrentRow> = {
  noun: 'break',
  list: 'the list of breaks',
  idOf: (row) => row.break_id,
  numbers: 'SELECT break_id FROM break_header UNION SELECT break_id FROM break_current ORDER BY break_id',
  current: 'SELECT * FROM break_current WHERE break_id IN (SELECT value FROM json_each(?))',
  derive: deriveBreaks,
}

const specimens: List<SpecimenCurrentRow> = {
  noun: 'specimen',
  list: 'the list of specimens',
  idOf: (row) => row.specimen_id,
  numbers:
    'SELECT specimen_id FROM specimen_revision UNION SELECT specimen_id FROM specimen_current ORDER BY specimen_id',
  current: 'SELECT * FROM specimen_current WHERE specimen_id IN (SELECT value FROM json_each(?))',
  derive: deriveSpecimens,
}

const cure = 'the lists can be made again from the records with the command rebuild'

/**
 * Compares what lists show with what the records say, and finds records that no list would show. Lists that another version
 * of the program made are none the worse for it: they are made again when the archive is opened for writing.
 */
export function verifyCurrent(database: Database, report: Report): void {
  if (!isDerivedHere(database)) return
  verifyCatalogue(database, report)
  verifyList(database, breaks, report)
  verifyList(database, specimens, report)
}

function verifyList<Row extends object>(database: Database, kind: List<Row>, report: Report): void {
  const { noun, list, idOf } = kind
  const byId = (rows: readonly Row[]) => new Map(rows.map((row) => [idOf(row), canonicalJson(row)]))
  const numbers = database.prepare<[], number>(kind.numbers).pluck().all() as number[]
  for (const ids of batchesOf(numbers)) {
    const shown = byId(prepared<Row>(database, kind.current).all(JSON.stringify(ids)))
    const derived = byId(kind.derive(database, ids))
    for (const id of ids) {
      const where = `${noun} ${id}`
      if (!shown.has(id)) report({ where, what: `${list} leaves it out: ${cure}` })
      else if (shown.get(id) !== derived.get(id))
        report({ where, what: `${list} shows something else than its records: ${cure}` })
    }
  }
}

function verifyCatalogue(database: Database, report: Report): void {
  const { current, names } = deriveCatalogue(database)
  const shown = {
    current: prepared<object>(database, 'SELECT * FROM catalogue_current ORDER BY entry_id').all(),
    names: prepared<object>(database, 'SELECT * FROM catalogue_name').all(),
  }
  const asText = (rows: readonly object[]) => rows.map((row) => canonicalJson(row)).sort()
  const same = (a: readonly object[], b: readonly object[]) => String(asText(a)) === String(asText(b))
  if (!same(shown.current, current) || !same(shown.names, names))
    report({ where: 'catalogue', what: `its names say something else than its records: ${cure}` })
}
