// Held by tests/archive/findings/climate/storeReadings.spec.ts.
import { climateDecision, climateImport } from '#contract/findings/climate.ts'
import { json, named, plain, truth } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'

/** Readings of a logger that were brought in at once. */
export const climateImportKind = recordKind({
  name: 'climate-import',
  noun: 'climate import',
  table: 'climate_import',
  identity: numbered('climateImportId'),
  instant: 'recordedAt',
  schema: climateImport,
  columns: {
    recordedAt: plain,
    by: plain,
    storeKind: plain,
    store: plain,
    fileName: plain,
    fileSha256: named('file_sha256'),
    mapping: json,
    temperatureUnit: plain,
    readings: plain,
    humidityReadings: plain,
    rejected: plain,
    fromS: named('from_unix_s'),
    toS: named('to_unix_s'),
    temperatureSha256: named('temperature_sha256'),
    humiditySha256: named('humidity_sha256'),
    simulated: truth,
  },
  topics: () => ['climate'],
})

/** A person's word on an import of readings. */
export const climateDecisionKind = recordKind({
  name: 'climate-decision',
  noun: 'decision on a climate import',
  table: 'climate_decision',
  identity: numbered('climateDecisionId'),
  instant: 'recordedAt',
  schema: climateDecision,
  columns: { climateImportId: plain, recordedAt: plain, by: plain, reason: plain, kind: plain },
  topics: () => ['climate'],
})
