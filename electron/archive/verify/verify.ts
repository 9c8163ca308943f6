import type { ChainHead, VerifyReport } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Database } from '../core/database.ts'
import type { Fault, Report } from '../core/fault.ts'
import { migrations as releasedMigrations } from '../core/migrate.ts'
import type { Migration } from '../core/migration.ts'
import type { LedgeredKind } from '../core/recordKind.ts'
import { chainHead } from '../keeping/chainHead.ts'
import { arePreferencesSound } from '../settings/preferences.ts'
import { recordKinds } from './recordKinds.ts'
import { verifyCalibrations } from './verifyCalibrations.ts'
import { verifyClimate } from './verifyClimate.ts'
import { verifyCurrent } from './verifyCurrent.ts'
import { type CurveCount, verifyBreak } from './verifyCurves.ts'
import { verifyLedger } from './verifyLedger.ts'
import { verifyPictures } from './verifyPictures.ts'
import { verifyReevaluations } from './verifyReevaluations.ts'
import { understandSchema, verifyConditions, verifySchema } from './verifySchema.ts'

/** After this many faults the archive is known to be beyond doubt damaged, and a longer list helps nobody. */
const mostFaults = 1000

/**
 * Looks at everything: SQLite's own checks, the texts of the schema and the conditions in them, the chain of hashes, each record against its entry in the chain, each curve
 * against its recorded checksum and peak, each picture and the readings of each logger against their hash. Faults are collected, not thrown. All of it sees one moment of the archive.
 */
export function verify(
  database: Database,
  onProgress: (progress: Progress) => void,
  kinds: readonly LedgeredKind[] = recordKinds,
  migrations: readonly Migration[] = releasedMigrations,
): VerifyReport {
  const faults: Fault[] = []
  const report: Report = (fault) => {
    if (faults.length < mostFaults) faults.push(fault)
  }
  return database.transaction(() => {
    let ledgerEntries = 0
    const count: CurveCount = { curves: 0, samples: 0 }
    let breaks = 0
    let head: ChainHead | null = null
    const found = () => ({ sound: faults.length === 0, ledgerEntries, breaks, ...count, head, faults })
    guarded('schema', report, () => understandSchema(database))
    // Nothing can be read then, and whatever is tried says the same.
    if (faults.length > 0) return found()
    verifyDatabase(database, report)
    guarded('schema', report, () => verifySchema(database, report, migrations))
    guarded('schema', report, () => verifyConditions(database, report, migrations))
    guarded('ledger', report, () => {
      ledgerEntries = verifyLedger(database, report, kinds)
      head = chainHead(database)
    })
    guarded('calibrations', report, () => verifyCalibrations(database, report))
    guarded('re-evaluations', report, () => verifyReevaluations(database, report))
    guarded('pictures', report, () => verifyPictures(database, report))
    guarded('climate', report, () => verifyClimate(database, report))
    guarded('lists', report, () => verifyCurrent(database, report))
    guarded('settings', report, () => {
      if (!arePreferencesSound(database))
        report({ where: 'settings', what: 'the settings kept in the archive do not match their checksum' })
    })
    guarded('breaks', report, () => {
      const ids = database
        .prepare<[], number>('SELECT break_id FROM break_header ORDER BY break_id')
        .pluck()
        .all() as number[]
      for (const breakId of ids) {
        onProgress({ task: 'verify', done: breaks, total: ids.length })
        guarded(`break ${breakId}`, report, () => verifyBreak(database, breakId, report, count))
        breaks += 1
      }
      onProgress({ task: 'verify', done: breaks, total: ids.length })
    })
    return found()
  })()
}

function verifyDatabase(database: Database, report: Report): void {
  guarded('database', report, () => {
    for (const row of database.pragma('integrity_check') as { integrity_check: string }[])
      if (row.integrity_check !== 'ok') report({ where: 'database', what: row.integrity_check })
  })
  guarded('database', report, () => {
    for (const row of database.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[])
      report({
        where: `table ${row.table}, row ${row.rowid}`,
        what: `it points to a row of ${row.parent} that is not there`,
      })
  })
}

/** A damaged page or record must not hide the faults that come after it. */
function guarded(where: string, report: Report, check: () => void): void {
  try {
    check()
  } catch (thrown) {
    report({ where, what: thrown instanceof Error ? thrown.message : String(thrown) })
  }
}
