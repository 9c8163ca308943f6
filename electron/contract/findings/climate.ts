import * as z from 'zod'
import { columnName, dateFormat, decimalSign, delimiter, textEncoding } from '../specimens/importMapping.ts'
import { finite, id, isoInstant, kept, words } from '../values.ts'

export const temperatureUnit = z.enum(['C', 'F'])
export type TemperatureUnit = z.infer<typeof temperatureUnit>

/** How the columns of a logger's file become readings. Kept with each import, and proposed again for a file with the same headings. */
export const climateMapping = z.strictObject({
  sheet: z.string().max(200).optional(),
  headerRow: z.int().min(0).max(10_000).default(1),
  delimiter: delimiter.optional(),
  decimal: decimalSign.optional(),
  encoding: textEncoding.optional(),
  /** The day, and the time of day unless that has a column of its own. Without a form only what can be but one day is taken. */
  time: z.strictObject({ column: columnName, dateFormat: dateFormat.optional() }),
  timeOfDay: z.strictObject({ column: columnName }).optional(),
  /** What the clock of the logger kept: UTC, +01:00, or a zone as Europe/Lisbon. */
  timeZone: words.min(1),
  temperature: z.strictObject({ column: columnName, unit: temperatureUnit }),
  humidity: z.strictObject({ column: columnName }).optional(),
})
export type ClimateMapping = z.infer<typeof climateMapping>

/** Where a logger hung: a place where blocks lie, or an exposure that they go through, by its name in the catalogue. */
export const climateStore = z.strictObject({ kind: z.enum(['place', 'exposure']), name: words.min(1) })
export type ClimateStore = z.infer<typeof climateStore>

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

/** Readings of a logger that were brought in at once. They lie beside the record, under its hashes. */
export const climateImport = z.strictObject({
  climateImportId: id,
  recordedAt: isoInstant,
  by: kept,
  storeKind: climateStore.shape.kind,
  store: kept,
  fileName: kept,
  fileSha256: sha256,
  /** The mapping that its cells were read with, as the program of that day knew it. */
  mapping: z.record(z.string(), z.json()),
  /** The temperatures are kept as they were written, in this unit. */
  temperatureUnit,
  readings: z.int().positive(),
  /** Some readings may have no humidity. */
  humidityReadings: z.int().nonnegative(),
  /** Rows of the file that gave no reading. */
  rejected: z.int().nonnegative(),
  /** Seconds since 1970, UTC, of the first reading and of the last. */
  fromS: z.int(),
  toS: z.int(),
  temperatureSha256: sha256,
  humiditySha256: sha256,
  /** Into an archive of the demo, where everything is invented. */
  simulated: z.boolean(),
})
export type ClimateImport = z.infer<typeof climateImport>

/** A person's word on an import of readings; the newest stands. */
export const climateDecision = z.strictObject({
  climateDecisionId: id,
  climateImportId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  kind: z.enum(['set-aside', 'taken-back']),
})
export type ClimateDecision = z.infer<typeof climateDecision>

/** An import as pages show it: under the name that its store has now, and who set it aside. */
export const climateImportSummary = z.strictObject({
  ...climateImport.omit({ mapping: true }).shape,
  setAside: z.strictObject({ by: kept, reason: kept, recordedAt: isoInstant }).nullable(),
})
export type ClimateImportSummary = z.infer<typeof climateImportSummary>

/** Limits beyond which hours are counted. */
export const climateLimits = z.strictObject({
  temperatureBelowC: finite.min(-60).max(80).default(0),
  temperatureAboveC: finite.min(-60).max(80).default(30),
  humidityBelowPercent: finite.min(0).max(100).default(35),
  humidityAbovePercent: finite.min(0).max(100).default(80),
})
export type ClimateLimits = z.infer<typeof climateLimits>
