import type { ClimateImport } from '#contract/findings/climate.ts'
import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'
import { findRecord } from '../core/recordTable.ts'
import { type ClimateQuantity, readClimateBlocks } from '../findings/climate/climateBlocks.ts'
import { hashOf } from '../findings/climate/storeReadings.ts'
import { climateImportKind } from '../findings/climateKinds.ts'

/** Decodes the readings of every climate import and holds them against the counts, times and hashes in its record. */
export function verifyClimate(database: Database, report: Report): void {
  const ids = prepared<{ id: number }>(database, `${climateImportKind.texts.ids} ORDER BY id`).all()
  for (const { id } of ids) {
    const made = findRecord(database, climateImportKind, id)
    if (made === null) continue
    verifyQuantity(database, report, made, 'temperature', made.readings, made.temperatureSha256)
    verifyQuantity(database, report, made, 'humidity', made.humidityReadings, made.humiditySha256)
  }
}

function verifyQuantity(
  database: Database,
  report: Report,
  { climateImportId, fromS, toS }: ClimateImport,
  quantity: ClimateQuantity,
  count: number,
  sha256: string,
): void {
  const where = `climate import ${climateImportId}`
  try {
    const read = readClimateBlocks(database, climateImportId, quantity)
    const { timeS } = read
    if (timeS.length !== count)
      report({ where, what: `it has ${timeS.length} readings of the ${quantity}, recorded are ${count}` })
    if (hashOf(read) !== sha256) report({ where, what: `its ${quantity} does not match the recorded SHA-256` })
    const rises = timeS.every((time, i) => i === 0 || time > timeS[i - 1]!)
    if (!rises || (count > 0 && !(timeS[0]! >= fromS && timeS.at(-1)! <= toS)))
      report({ where, what: `the times of its ${quantity} do not rise within those recorded` })
  } catch (thrown) {
    report({ where, what: thrown instanceof Error ? thrown.message : String(thrown) })
  }
}
