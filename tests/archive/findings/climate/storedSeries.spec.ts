import { expect, it } from 'vitest'
import { heldAgainstSeries, joinedSeries } from '#archive/findings/climate/storedSeries.ts'

const series = (times: number[], temperature = 5, humidity = 60) => ({
  timeS: Float64Array.from(times),
  temperatureC: Float64Array.from(times, () => temperature),
  humidityPercent: Float64Array.from(times, () => humidity),
})

it('joins series in the order of their times', () => {
  const joined = joinedSeries([series([0, 10], 1), series([5, 15], 2), series([20], 3)])
  expect([...joined.timeS]).toEqual([0, 5, 10, 15, 20])
  expect([...joined.temperatureC]).toEqual([1, 2, 1, 2, 3])
  expect(joinedSeries([]).timeS).toHaveLength(0)
})

it('says of each reading whether nothing, the same or another one is kept', () => {
  const kept = series([0, 10, 20])
  const other = series([10, 20, 30, 40])
  other.temperatureC[1] = 6
  expect([...heldAgainstSeries(kept, other)]).toEqual([1, 2, 0, 0])
  const without = series([0], 5, Number.NaN)
  expect([...heldAgainstSeries(without, without)]).toEqual([1])
  expect([...heldAgainstSeries(kept, without)]).toEqual([2])
})
