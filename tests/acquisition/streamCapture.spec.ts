import { expect, test } from 'vitest'
import { createStreamCapture } from '#acquisition/streamCapture.ts'
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

const settings = detectionSettings.parse({ capacityN: 5000 })
const result = {} as EvaluationResult

function stream() {
  const told: unknown[] = []
  const capture = createStreamCapture(movedClock(), settings, {
    begin: (start) => told.push(start),
    samples: ({ timeUs, readings }) => told.push([[...timeUs], [...readings]]),
    end: (_result, ending) => told.push(ending),
  })
  const append = (...samples: [timeUs: number, reading: number][]) =>
    capture.append(
      Float64Array.from(samples, ([timeUs]) => timeUs),
      Float64Array.from(samples, ([, reading]) => reading),
      0,
      samples.length,
    )
  const begin = (samples: number) => {
    const under = { ...settings, startThresholdN: 20, capacityN: null }
    capture.begin({ samples, firstTimeS: 0.01, settings: under }, 'counts')
  }
  return { capture, told, append, begin }
}

test('hands on the samples of a capture from its first one, timed from there', () => {
  const { capture, told, append, begin } = stream()
  append([0, 1], [10_000, 2], [20_000, 3])
  begin(2)
  append([30_000, 4])
  capture.end(result)
  append([40_000, 5])
  expect(told).toEqual([
    expect.objectContaining({ streamTimeS: 0.01, readingUnit: 'counts' }),
    [
      [0, 10_000, 20_000],
      [2, 3, 4],
    ],
    'complete',
  ])
})

test('records the rated load also of a stream that has no scale yet', () => {
  const { told, append, begin } = stream()
  append([0, 1])
  begin(1)
  expect(told[0]).toMatchObject({ settings: { startThresholdN: 20, capacityN: 5000 } })
})

test('says of a capture that the end of the stream cut short that it was interrupted, and of the next nothing', () => {
  const { capture, told, append, begin } = stream()
  append([0, 1])
  begin(1)
  capture.cutShort()
  capture.end(result)
  begin(1)
  capture.end(result)
  expect(told.filter((one) => typeof one === 'string')).toEqual(['interrupted', 'complete'])
  expect(capture.running()).toBe(false)
})

test('keeps the newest samples at hand until they are of another stretch of time', () => {
  const { capture, append } = stream()
  append([0, 1], [500_000, 2], [1_400_000, 3])
  expect([...capture.newest(1).readings]).toEqual([2, 3])
  capture.clear()
  expect([...capture.newest(1).readings]).toEqual([])
})

test('keeps of a slow device as many samples as a capture may begin with, however long ago they came', () => {
  const { capture, told, append, begin } = stream()
  for (let i = 0; i <= 24; i++) append([i * 2_000_000, i])
  begin(25)
  capture.end(result)
  expect(told[1]).toEqual([
    Array.from({ length: 25 }, (_, i) => i * 2_000_000),
    Array.from({ length: 25 }, (_, i) => i),
  ])
})
