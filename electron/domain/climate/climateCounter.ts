// Held by tests/domain/climate/storeClimate.spec.ts.
import type { ClimateLimits } from '#contract/findings/climate.ts'
import type { ClimateCount } from '#contract/findings/climateAnswers.ts'
import { freezeThawCounter } from './freezeThaw.ts'
import { rainflowCounter } from './rainflow.ts'

/** Swings that are counted: °C, and percent points of moisture (our choice, no source). */
const temperatureSteps = [5, 10, 20] as const
const moistureSteps = [1, 2, 4] as const
const secondsPerHour = 3600

/** Counts what a stretch of time did to the blocks in a store, reading by reading. Checked: tests/domain/climate/storeClimate.spec.ts. */
export type ClimateCounter = {
  /** NaN: not read. `standingS`: how long the reading stands. */
  push(temperatureC: number, humidityPercent: number, moisturePercent: number, standingS: number): void
  /** Throws RangeError without a reading. Ends the counting. */
  result(): ClimateCount
}

/** Nothing is counted yet. Rainflow goes across gaps as if nothing had swung in them. */
export function climateCounter(limits: ClimateLimits): ClimateCounter {
  const [temperature, humidity, moisture] = [extentCounter(), extentCounter(), extentCounter()]
  const [temperatureSwings, moistureSwings] = [swingCounter(temperatureSteps), swingCounter(moistureSteps)]
  const freezeThaw = freezeThawCounter()
  const beyondS = { temperatureBelow: 0, temperatureAbove: 0, humidityBelow: 0, humidityAbove: 0 }
  let standing = 0
  return {
    push(temperatureC, humidityPercent, moisturePercent, standingS) {
      standing += standingS
      temperature.push(temperatureC, standingS)
      temperatureSwings.push(temperatureC)
      freezeThaw.push(temperatureC)
      if (temperatureC < limits.temperatureBelowC) beyondS.temperatureBelow += standingS
      if (temperatureC > limits.temperatureAboveC) beyondS.temperatureAbove += standingS
      if (Number.isNaN(humidityPercent)) return
      humidity.push(humidityPercent, standingS)
      moisture.push(moisturePercent, standingS)
      moistureSwings.push(moisturePercent)
      if (humidityPercent < limits.humidityBelowPercent) beyondS.humidityBelow += standingS
      if (humidityPercent > limits.humidityAbovePercent) beyondS.humidityAbove += standingS
    },
    result() {
      const temperatureC = temperature.result()
      if (temperatureC === null) throw new RangeError('climateCounter requires at least one reading')
      return {
        hours: standing / secondsPerHour,
        temperatureC,
        humidityPercent: humidity.result(),
        moisturePercent: moisture.result(),
        freezeThawCycles: freezeThaw.cycles(),
        temperatureSwings: temperatureSwings.result(),
        moistureSwings: moistureSwings.result(),
        hoursBeyond: {
          temperatureBelow: beyondS.temperatureBelow / secondsPerHour,
          temperatureAbove: beyondS.temperatureAbove / secondsPerHour,
          humidityBelow: beyondS.humidityBelow / secondsPerHour,
          humidityAbove: beyondS.humidityAbove / secondsPerHour,
        },
      }
    },
  }
}

/** Lowest and highest value, and the mean over time; of readings that stand for nothing the plain mean. */
function extentCounter() {
  let [sum, weight, plain, count] = [0, 0, 0, 0]
  let [min, max] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  return {
    push(value: number, standingS: number) {
      sum += value * standingS
      weight += standingS
      plain += value
      count += 1
      if (value < min) min = value
      if (value > max) max = value
    },
    result: () => (count === 0 ? null : { min, mean: weight > 0 ? sum / weight : plain / count, max }),
  }
}

function swingCounter(steps: readonly number[]) {
  const counts = steps.map(() => 0)
  const counter = rainflowCounter(({ range, count }) => {
    for (let i = 0; i < steps.length; i++) if (range >= steps[i]!) counts[i]! += count
  })
  return {
    push: counter.push,
    result() {
      counter.end()
      return steps.map((least, i) => ({ least, count: counts[i]! }))
    },
  }
}
