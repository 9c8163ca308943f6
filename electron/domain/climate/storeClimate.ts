import { equilibriumMoisturePercent } from './equilibriumMoisture.ts'
import { rainflowCycles } from './rainflow.ts'

/** One reading of a logger: seconds since 1970, degrees Celsius, percent. */
export type ClimateReading = {
  readonly timeS: number
  readonly temperatureC: number
  readonly humidityPercent: number | null
}

/** What a store did to the blocks in it. */
export type StoreClimate = {
  readonly readings: number
  readonly fromS: number
  readonly toS: number
  readonly temperatureC: Extent
  readonly humidityPercent: Extent | null
  readonly moisturePercent: Extent | null
  /** Times that it froze through and thawed again. */
  readonly freezeThawCycles: number
  /** Swings of the wood's moisture that are at least as large, and how many came in a year. */
  readonly swings: readonly { leastPercent: number; perYear: number }[]
}
export type Extent = { readonly min: number; readonly mean: number; readonly max: number }

/** Below and above which water in wood counts as frozen and as thawed (our choice, no source); the band keeps a reading that trembles about 0 from counting. */
const frozenC = -1
const thawedC = 1
/** Swings of moisture that are counted, percent of dry mass (our choice, no source). */
const askedSwings = [1, 2, 4] as const
const yearS = 365.25 * 86_400

/** Mean over time, each reading standing until the next one (the last as long as the one before it). */
function extentOf(readings: readonly { timeS: number; value: number }[]): Extent | null {
  if (readings.length === 0) return null
  let [sum, time, min, max] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  let lasts = 1
  readings.forEach(({ timeS, value }, i) => {
    const next = readings[i + 1]
    if (next !== undefined) lasts = next.timeS - timeS
    sum += value * lasts
    time += lasts
    min = Math.min(min, value)
    max = Math.max(max, value)
  })
  return { min, mean: sum / time, max }
}

/** Times that a series went below frozen and came back above thawed. Checked: tests/domain/climate/storeClimate.spec.ts. */
export function freezeThawCycles(temperaturesC: readonly number[]): number {
  let isFrozen = false
  let cycles = 0
  for (const temperature of temperaturesC) {
    if (temperature <= frozenC) isFrozen = true
    else if (isFrozen && temperature >= thawedC) {
      isFrozen = false
      cycles += 1
    }
  }
  return cycles
}

/**
 * The climate of a store from the readings of a logger, in the order of their times: extents weighted by time, moisture of the wood as the
 * air would have it in the end (a block follows more slowly), freeze-thaw cycles, and swings of that moisture by rainflow (half cycles
 * count half). Null without readings. Throws RangeError where a time does not rise.
 * Checked: tests/domain/climate/storeClimate.spec.ts.
 */
export function storeClimate(readings: readonly ClimateReading[]): StoreClimate | null {
  if (readings.length === 0) return null
  if (readings.some(({ timeS }, i) => i > 0 && timeS <= readings[i - 1]!.timeS))
    throw new RangeError('storeClimate requires times that rise')
  const series = (read: (one: ClimateReading) => number | null) =>
    readings.flatMap((one) => {
      const value = read(one)
      return value === null ? [] : [{ timeS: one.timeS, value }]
    })
  const moisture = series(({ temperatureC, humidityPercent }) =>
    humidityPercent === null ? null : equilibriumMoisturePercent(temperatureC, humidityPercent),
  )
  const fromS = readings[0]!.timeS
  const toS = readings.at(-1)!.timeS
  const years = (toS - fromS) / yearS
  const cycles = rainflowCycles(moisture.map(({ value }) => value))
  return {
    readings: readings.length,
    fromS,
    toS,
    temperatureC: extentOf(series(({ temperatureC }) => temperatureC))!,
    humidityPercent: extentOf(series(({ humidityPercent }) => humidityPercent)),
    moisturePercent: extentOf(moisture),
    freezeThawCycles: freezeThawCycles(readings.map(({ temperatureC }) => temperatureC)),
    swings: askedSwings.map((leastPercent) => ({
      leastPercent,
      perYear:
        years > 0 ? cycles.reduce((sum, { range, count }) => sum + (range >= leastPercent ? count : 0), 0) / years : 0,
    })),
  }
}
