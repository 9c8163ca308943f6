import type { ClimateImport, ClimateStore } from '#contract/findings/climate.ts'
import type { Progress } from '#contract/tasks.ts'
import { nameNew } from '../../catalogue/newNames.ts'
import type { Database } from '../../core/database.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { stopped } from '../../core/recordTrouble.ts'
import { inTransaction } from '../../core/transaction.ts'
import { curveSha256 } from '../../curves/curveHash.ts'
import { climateImportKind } from '../climateKinds.ts'
import { type QuantityReadings, storeClimateBlocks } from './climateBlocks.ts'
import { heldAgainstSeries, importsOfStore, inCelsius, joinedSeries, readingsOfImport } from './storedSeries.ts'

/** Readings of a file as they were written, in the order of their times; NaN: no humidity. */
export type WrittenReadings = {
  timeS: Float64Array<ArrayBuffer>
  temperature: Float64Array<ArrayBuffer>
  humidityPercent: Float64Array<ArrayBuffer>
}

/** An import as it is asked for. */
export type NewReadings = {
  store: ClimateStore
  readings: WrittenReadings
  said: Pick<
    ClimateImport,
    'recordedAt' | 'by' | 'fileName' | 'fileSha256' | 'mapping' | 'temperatureUnit' | 'rejected' | 'simulated'
  >
}

/** What of some readings a store has already: for each 0: nothing, 1: the same, 2: another reading at that time. */
export function judgeReadings(
  database: Database,
  store: ClimateStore,
  unit: ClimateImport['temperatureUnit'],
  { timeS, temperature, humidityPercent }: WrittenReadings,
): Uint8Array<ArrayBuffer> {
  const first = timeS[0] ?? 0
  const last = timeS.at(-1) ?? 0
  const near = importsOfStore(database, store).filter(({ fromS, toS }) => fromS <= last && toS >= first)
  if (near.length === 0) return new Uint8Array(timeS.length)
  const kept = joinedSeries(near.map((made) => readingsOfImport(database, made)))
  return heldAgainstSeries(kept, { timeS, temperatureC: inCelsius(temperature, unit), humidityPercent })
}

/**
 * Keeps those readings of a file for whose times the store has none, all of them or, where it is stopped or fails, none; returns
 * what `judgeReadings` says of each. Where none is new, nothing is recorded. A store that the catalogue lacks is entered in it.
 * No sample of a running capture can be stored meanwhile. Throws the trouble "cancelled" when it is stopped.
 */
export function storeReadings(
  database: Database,
  onProgress: (progress: Progress) => void,
  isCancelled: () => boolean,
  { store, readings, said }: NewReadings,
): Uint8Array<ArrayBuffer> {
  return inTransaction(database, () => {
    const judged = judgeReadings(database, store, said.temperatureUnit, readings)
    const { temperature, humidity } = newReadings(readings, judged)
    const count = temperature.timeS.length
    if (count === 0) return judged
    const step = (done: number) => {
      onProgress({ task: 'climate', done, total: 3 })
      if (isCancelled()) throw stopped('Nothing of the logger file was stored: it was stopped.')
    }
    step(0)
    nameNew(database, [{ kind: store.kind, name: store.name, of: '' }], said.recordedAt, said.by)
    const temperatureSha256 = hashOf(temperature)
    const humiditySha256 = hashOf(humidity)
    step(1)
    const { climateImportId } = storeRecord(database, climateImportKind, {
      ...said,
      rejected: said.rejected + judged.reduce((sum, found) => sum + Number(found === 2), 0),
      ...{ storeKind: store.kind, store: store.name, readings: count, humidityReadings: humidity.timeS.length },
      ...{ fromS: temperature.timeS[0]!, toS: temperature.timeS[count - 1]!, temperatureSha256, humiditySha256 },
    })
    storeClimateBlocks(database, climateImportId, 'temperature', temperature)
    step(2)
    storeClimateBlocks(database, climateImportId, 'humidity', humidity)
    step(3)
    return judged
  })
}

/** The hash of readings: that of a curve, with whole seconds since 1970 for microseconds. */
export function hashOf({ timeS, values }: QuantityReadings): string {
  return curveSha256({ timeUs: timeS, readings: values })
}

function newReadings(
  { timeS, temperature, humidityPercent }: WrittenReadings,
  judged: Uint8Array,
): { temperature: QuantityReadings; humidity: QuantityReadings } {
  const isNew = (i: number) => judged[i] === 0
  const picked = (values: Float64Array, takes: (i: number) => boolean): QuantityReadings => ({
    timeS: timeS.filter((_, i) => takes(i)),
    values: values.filter((_, i) => takes(i)) as Float64Array<ArrayBuffer>,
  })
  return {
    temperature: picked(temperature, isNew),
    humidity: picked(humidityPercent, (i) => isNew(i) && !Number.isNaN(humidityPercent[i]!)),
  }
}
