import * as z from 'zod'
import { finite, id, kept, samples } from '../values.ts'
import { climateMapping, climateStore } from './climate.ts'

const timeS = z.int()
const span = z.strictObject({ fromS: timeS, toS: timeS })
const extent = z.strictObject({ min: finite, mean: finite, max: finite })

/** One quantity over time: of each stretch of time the lowest, the mean over time and the highest. As long as each other. */
const band = z.strictObject({ timeS: samples, min: samples, mean: samples, max: samples })
export type ClimateBand = z.infer<typeof band>

const swings = z.array(z.strictObject({ least: finite, count: finite.nonnegative() }))

/** What a calendar year (UTC), or all of the time, did to the blocks. Half cycles count half; hours are those with readings. */
const climateCount = z.strictObject({
  hours: finite.nonnegative(),
  temperatureC: extent,
  humidityPercent: extent.nullable(),
  moisturePercent: extent.nullable(),
  freezeThawCycles: z.int().nonnegative(),
  /** By rainflow, °C and percent points of moisture, each at least as large. */
  temperatureSwings: swings,
  moistureSwings: swings,
  hoursBeyond: z.strictObject({
    temperatureBelow: finite,
    temperatureAbove: finite,
    humidityBelow: finite,
    humidityAbove: finite,
  }),
})
export type ClimateCount = z.infer<typeof climateCount>

/** What a series of readings says of a store. */
export const storeClimate = z.strictObject({
  readings: z.int().positive(),
  fromS: timeS,
  toS: timeS,
  bands: z.strictObject({ temperatureC: band, humidityPercent: band.nullable(), moisturePercent: band.nullable() }),
  whole: climateCount,
  years: z.array(climateCount.extend({ year: z.int() })),
  /** The longest first; no more than a page shows. */
  gaps: z.array(span),
  gapCount: z.int().nonnegative(),
  gapHours: finite.nonnegative(),
})
export type StoreClimate = z.infer<typeof storeClimate>

/** Blocks of a series that lay in the store, at each age on the day in the middle of those on which they were broken. */
const strengthAtAge = z.strictObject({
  ageMonths: finite.nullable(),
  brokenS: timeS,
  n: z.int().positive(),
  meanMPa: finite.nullable(),
  lowMPa: finite.nullable(),
  highMPa: finite.nullable(),
})
export const storedSeries = z.strictObject({
  key: z.string(),
  adhesive: kept,
  jointType: kept,
  bondLineGapMm: finite.nullable(),
  exposure: kept,
  /** The day on which the first of its blocks was glued; null: nobody wrote it down. */
  gluedS: timeS.nullable(),
  simulated: z.boolean(),
  ages: z.array(strengthAtAge),
})
export type StoredSeries = z.infer<typeof storedSeries>

/** A day on which blocks of a series are to leave the store. */
export const pullToCome = z.strictObject({ series: z.string(), ageMonths: z.int().nonnegative(), dueS: timeS })
export type PullToCome = z.infer<typeof pullToCome>

/** The climate of a store, beside the strength of the blocks in it. */
export const climateOfStore = z.strictObject({
  /** Under the name that it has now. */
  store: climateStore,
  simulated: z.boolean(),
  /** null: every import is set aside. */
  climate: storeClimate.nullable(),
  series: z.array(storedSeries),
  /** Of the blocks that wait there, the nearest first; `series` is a key as above, also of a series without any break. */
  toCome: z.array(pullToCome),
})
export type ClimateOfStore = z.infer<typeof climateOfStore>

/** What an exposure with readings did to its blocks, in few numbers. */
export const exposureClimate = z.strictObject({
  exposure: kept,
  fromS: timeS,
  toS: timeS,
  simulated: z.boolean(),
  whole: climateCount,
})
export type ExposureClimate = z.infer<typeof exposureClimate>

/** What became of a row of a logger's file, or would become of it. Temperature in the unit of the mapping. */
export const loggerRow = z.strictObject({
  row: id,
  fate: z.enum(['new', 'already-there', 'rejected']),
  timeS: timeS.nullable(),
  temperature: finite.nullable(),
  humidityPercent: finite.nullable(),
  /** In one sentence. */
  reason: z.string().nullable(),
})
export type LoggerRow = z.infer<typeof loggerRow>

const count = z.int().nonnegative()

/** What an import of readings came to. */
export const climateOutcome = z.strictObject({
  new: count,
  alreadyThere: count,
  rejected: count,
  fileSha256: z.string(),
  fromS: timeS.nullable(),
  toS: timeS.nullable(),
  /** The first rows, and of the others as many rejected ones as a page shows. */
  rows: z.array(loggerRow),
  gaps: z.array(span),
  gapCount: count,
  /** The newest stood first, and the file was read from its end. */
  newestFirst: z.boolean(),
  dryRun: z.boolean(),
})
export type ClimateOutcome = z.infer<typeof climateOutcome>

const guess = <Item extends z.ZodType>(item: Item) => item.nullable()

/** What the headings and the first rows of a file say of its columns; null: a person has to say it. */
export const climateProposal = z.strictObject({
  sheets: z.array(kept),
  sheet: kept.nullable(),
  headerRow: z.int().nonnegative(),
  headings: z.array(z.strictObject({ column: z.string(), heading: kept, example: kept })),
  time: guess(z.string()),
  timeOfDay: guess(z.string()),
  dateFormat: guess(z.string()),
  /** Every form that all days looked at could be written in. */
  dateFormats: z.array(z.string()),
  temperature: guess(z.string()),
  temperatureUnit: guess(z.enum(['C', 'F'])),
  humidity: guess(z.string()),
  decimal: guess(z.enum(['.', ','])),
  /** The mapping of the newest import whose columns this file has too; null: there is none. */
  kept: climateMapping.nullable(),
})
export type ClimateProposal = z.infer<typeof climateProposal>
