import type { ClimateImport, ClimateStore, TemperatureUnit } from '#contract/findings/climate.ts'
import { celsius } from '#domain/climate/celsius.ts'
import type { ClimateSeries } from '#domain/climate/climateSeries.ts'
import { firstAtOrAfter } from '#domain/numbers/risingSearch.ts'
import { nameReader } from '../../catalogue/names.ts'
import type { Database } from '../../core/database.ts'
import { readRecords } from '../../core/recordTable.ts'
import { climateImportKind } from '../climateKinds.ts'
import { readClimateBlocks } from './climateBlocks.ts'

/** Imports that no newest decision sets aside. */
const inUse = `WHERE coalesce((SELECT kind FROM climate_decision d WHERE d.climate_import_id = climate_import.climate_import_id
  ORDER BY climate_decision_id DESC LIMIT 1), '') <> 'set-aside' ORDER BY from_unix_s, climate_import_id`

/** Says which store a record means: under the name that its entry of the catalogue has now, whatever it was called. */
export function storeReader(database: Database): (store: ClimateStore) => ClimateStore {
  const read = nameReader(database)
  return ({ kind, name }) => ({ kind, name: read({ kind, name, of: '' })?.name ?? name })
}

/** The imports that count of every store, in the order of their first readings. */
export function importsInUse(database: Database): { made: ClimateImport; store: ClimateStore }[] {
  const storeOf = storeReader(database)
  return readRecords(database, climateImportKind, inUse).map((made) => ({
    made,
    store: storeOf({ kind: made.storeKind, name: made.store }),
  }))
}

/** The imports that count of one store. */
export function importsOfStore(database: Database, wanted: ClimateStore): ClimateImport[] {
  const { kind, name } = storeReader(database)(wanted)
  return importsInUse(database).flatMap(({ made, store }) => (store.kind === kind && store.name === name ? [made] : []))
}

/** The readings of one import. */
export function readingsOfImport(
  database: Database,
  { climateImportId, temperatureUnit }: ClimateImport,
): ClimateSeries {
  const temperature = readClimateBlocks(database, climateImportId, 'temperature')
  const humidity = readClimateBlocks(database, climateImportId, 'humidity')
  return {
    timeS: temperature.timeS,
    temperatureC: inCelsius(temperature.values, temperatureUnit),
    humidityPercent: besideTimes(temperature.timeS, humidity.timeS, humidity.values),
  }
}

/** Temperatures as they were written, in °C. */
export function inCelsius(values: Float64Array, unit: TemperatureUnit): Float64Array {
  return unit === 'C' ? values : values.map((value) => celsius(value, unit))
}

function besideTimes(timeS: Float64Array, ownTimeS: Float64Array, own: Float64Array): Float64Array {
  if (ownTimeS.length === timeS.length) return own
  const beside = new Float64Array(timeS.length).fill(Number.NaN)
  for (let i = 0, place = 0; i < ownTimeS.length; i++) {
    while (timeS[place]! < ownTimeS[i]!) place++
    beside[place] = own[i]!
  }
  return beside
}

/** All readings of some imports as one series in the order of their times. */
export function joinedSeries(parts: readonly ClimateSeries[]): ClimateSeries {
  if (parts.length === 1) return parts[0]!
  const count = parts.reduce((sum, { timeS }) => sum + timeS.length, 0)
  const joined = {
    timeS: new Float64Array(count),
    temperatureC: new Float64Array(count),
    humidityPercent: new Float64Array(count),
  }
  const keys = ['timeS', 'temperatureC', 'humidityPercent'] as const
  let end = 0
  for (const part of parts) {
    for (const key of keys) joined[key].set(part[key], end)
    end += part.timeS.length
  }
  if (joined.timeS.every((time, i) => i === 0 || time > joined.timeS[i - 1]!)) return joined
  const order = Uint32Array.from({ length: count }, (_, i) => i).sort((a, b) => joined.timeS[a]! - joined.timeS[b]!)
  const sorted = (values: Float64Array) => Float64Array.from(order, (place) => values[place]!)
  return {
    timeS: sorted(joined.timeS),
    temperatureC: sorted(joined.temperatureC),
    humidityPercent: sorted(joined.humidityPercent),
  }
}

/** What is kept for times that already have a reading: 0: nothing, 1: the same reading, 2: another one. */
export function heldAgainstSeries(kept: ClimateSeries, readings: ClimateSeries): Uint8Array<ArrayBuffer> {
  const found = new Uint8Array(readings.timeS.length)
  for (let i = 0; i < found.length; i++) {
    const place = firstAtOrAfter(kept.timeS, readings.timeS[i]!)
    if (kept.timeS[place] !== readings.timeS[i]) continue
    const same =
      near(kept.temperatureC[place]!, readings.temperatureC[i]!) &&
      near(kept.humidityPercent[place]!, readings.humidityPercent[i]!)
    found[i] = same ? 1 : 2
  }
  return found
}

/** A reading that went through another unit differs in its last bits. */
const near = (one: number, other: number) => Object.is(one, other) || Math.abs(one - other) < 1e-9
