import type { ClimateLimits } from '#contract/findings/climate.ts'
import type { ClimateCount, StoreClimate } from '#contract/findings/climateAnswers.ts'
import { thinnedBand } from './climateBands.ts'
import { type ClimateCounter, climateCounter } from './climateCounter.ts'
import { type ClimateSeries, standingTimes } from './climateSeries.ts'
import { equilibriumMoisturePercent } from './equilibriumMoisture.ts'

/** As many stretches as a figure can show beside each other. */
const stretches = 480
/** So many gaps are named, the longest first. */
const mostGaps = 50
const secondsPerHour = 3600

/**
 * The climate of a store: moisture of the wood as the air would have it in the end (a block follows more slowly), what is counted
 * in each calendar year (UTC) and in all, and gaps. Null without readings. Throws RangeError where a time does not rise.
 * Checked: tests/domain/climate/storeClimate.spec.ts.
 */
export function storeClimate(series: ClimateSeries, limits: ClimateLimits): StoreClimate | null {
  const { timeS, temperatureC, humidityPercent } = series
  if (timeS.length === 0) return null
  const { standingS, gaps } = standingTimes(timeS)
  const moisture = temperatureC.map((t, i) => equilibriumMoisturePercent(t, humidityPercent[i]!) ?? Number.NaN)
  const whole = climateCounter(limits)
  const years: { year: number; counter: ClimateCounter }[] = []
  let nextYearS = Number.NEGATIVE_INFINITY
  for (let i = 0; i < timeS.length; i++) {
    if (timeS[i]! >= nextYearS) {
      const year = new Date(timeS[i]! * 1000).getUTCFullYear()
      nextYearS = Date.UTC(year + 1, 0, 1) / 1000
      years.push({ year, counter: climateCounter(limits) })
    }
    const reading = [temperatureC[i]!, humidityPercent[i]!, moisture[i]!, standingS[i]!] as const
    whole.push(...reading)
    years.at(-1)!.counter.push(...reading)
  }
  const band = (values: Float64Array) => thinnedBand(timeS, values, standingS, stretches)
  return {
    readings: timeS.length,
    fromS: timeS[0]!,
    toS: timeS.at(-1)!,
    bands: {
      temperatureC: band(temperatureC)!,
      humidityPercent: band(humidityPercent),
      moisturePercent: band(moisture),
    },
    whole: whole.result(),
    years: years.map(({ year, counter }): ClimateCount & { year: number } => ({ year, ...counter.result() })),
    gaps: gaps.toSorted((one, other) => other.toS - other.fromS - (one.toS - one.fromS)).slice(0, mostGaps),
    gapCount: gaps.length,
    gapHours: gaps.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0) / secondsPerHour,
  }
}
