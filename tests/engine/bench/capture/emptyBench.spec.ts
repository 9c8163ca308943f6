import { expect, test } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { isEmpty, isFree } from '#engine/bench/capture/emptyBench.ts'
import { benchAtRest } from '#tests/fakes/benchAtRest.ts'

const signal = { ...benchAtRest.signal, noise: 0.5, startThreshold: 20 }

test('is empty below three start thresholds, whichever way the force goes', () => {
  expect(isEmpty({ latest: 59 }, signal)).toBe(true)
  expect(isEmpty({ latest: -59 }, signal)).toBe(true)
  expect(isEmpty({ latest: 60 }, signal)).toBe(false)
  expect(isEmpty({ latest: -60 }, signal)).toBe(false)
})

test('is not known to be empty before a sample came, and is where nothing says from when on it is loaded', () => {
  expect(isEmpty({ latest: null }, signal)).toBe(false)
  expect(isEmpty({ latest: 900 }, { ...signal, startThreshold: null })).toBe(true)
})

test('is free below three shares of the capacity at which a load would begin, or fifteen times the noise', () => {
  const settings = { ...detectionSettings.parse({}), capacityN: 1000, startCapacityShare: 0.01 }
  expect(isFree({ latest: -30 }, signal, settings)).toBe(true)
  expect(isFree({ latest: 30.1 }, signal, settings)).toBe(false)
  expect(isFree({ latest: 45 }, { ...signal, noise: 3 }, settings)).toBe(true)
  expect(isFree({ latest: 45.1 }, { ...signal, noise: 3 }, settings)).toBe(false)
  expect(isFree({ latest: 7.5 }, signal, { ...settings, capacityN: null })).toBe(true)
  expect(isFree({ latest: null }, signal, settings)).toBe(false)
})
