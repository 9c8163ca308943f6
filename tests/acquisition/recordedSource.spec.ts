import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { createRecordedSource, type RecordedSourceOptions } from '#acquisition/recordedSource.ts'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { LineFormatChoice, ScenarioName } from '#contract/bench/source.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

const recording = Uint8Array.from({ length: 1000 }, (_, i) => i % 256)

function player(options: Partial<RecordedSourceOptions> = {}) {
  const clock = movedClock()
  const source = createRecordedSource(
    { recording, bytesPerSecond: 100, paced: true, chunkBytes: 30, ...options },
    clock,
  )
  const heard: number[] = []
  const arrivals: number[] = []
  let ended = 0
  const listener = {
    bytes(chunk: Uint8Array, arrivalS: number) {
      heard.push(...chunk)
      arrivals.push(arrivalS)
    },
    lost: () => {},
    restored: () => {},
    ended: () => {
      ended += 1
    },
  }
  return { clock, source, heard, arrivals, listener, ended: () => ended }
}

describe('recorded source', () => {
  it('plays every byte in the time it took', async () => {
    const { clock, source, heard, arrivals, listener, ended } = player()
    await source.open(listener)
    await clock.move(5)
    expect(heard).toHaveLength(480)
    await clock.move(5.1)
    expect(heard).toEqual([...recording])
    expect(arrivals[0]).toBeCloseTo(0.3, 9)
    expect(ended()).toBe(1)
  })

  it('plays at once with the arrival times it would have had', async () => {
    const { clock, source, heard, arrivals, listener, ended } = player({ paced: false })
    await source.open(listener)
    await clock.move(0)
    expect(heard).toEqual([...recording])
    expect(arrivals.at(-1)).toBeCloseTo(10, 9)
    expect(ended()).toBe(1)
  })

  it('stops when closed and plays from the start when opened again', async () => {
    const { clock, source, heard, listener, ended } = player()
    await source.open(listener)
    await clock.move(1)
    await source.close()
    await clock.move(20)
    expect(heard).toHaveLength(90)
    expect(ended()).toBe(0)
    await source.open(listener)
    await clock.move(20)
    expect(heard).toHaveLength(1090)
  })

  it('plays a file, and says which one it cannot read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-'))
    try {
      const path = join(folder, 'stream.txt')
      writeFileSync(path, recording)
      const { clock, source, heard, listener } = player({ recording: path, paced: false })
      await source.open(listener)
      await clock.move(0)
      expect(heard).toEqual([...recording])
      const missing = player({ recording: join(folder, 'missing.txt') })
      await expect(missing.source.open(missing.listener)).rejects.toMatchObject({
        code: 'not-readable',
        message: expect.stringContaining('missing.txt'),
      })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})

describe('recorded streams of the samples folder', () => {
  it.each([
    ['brittle-80hz-checked.txt', { name: 'checked', columns: [] }, 'brittle', 75, 7665],
    ['stick-slip-80hz-columns.txt', { name: 'columns', columns: ['time_us', 'counts'] }, 'stick-slip', 58, 6131],
    ['hand-pumped-80hz-number-damaged.txt', { name: 'number', columns: [] }, 'hand-pumped', 75, 7665],
  ] satisfies [string, LineFormatChoice, ScenarioName, number, number][])(
    '%s holds the samples that its README names',
    async (file, lineFormat, scenario, seed, peakN) => {
      const path = fileURLToPath(new URL(`../../samples/${file}`, import.meta.url))
      const { clock, source, listener } = player({ recording: path, paced: false, chunkBytes: 97 })
      const counts: number[] = []
      let rejected = 0
      const parser = readLines(
        lineFormat,
        (value) => counts.push(value),
        () => rejected++,
      )
      await source.open({ ...listener, bytes: (chunk) => parser.push(chunk) })
      await clock.move(0)
      const bench = createBenchModel({ scenario, rateHz: 80, seed, breaks: 1, restS: [3, 3] })
      const samples = {
        timeUs: new Float64Array(4000),
        counts: new Float64Array(4000),
        sequence: new Float64Array(4000),
      }
      const length = bench.fill(samples)
      expect(Math.round(bench.truths[0]!.peakN)).toBe(peakN)
      expect(counts.length + rejected).toBe(length)
      if (lineFormat.name === 'number') expect(rejected).toBeGreaterThan(0)
      else expect(counts).toEqual([...samples.counts.subarray(0, length)])
    },
  )
})
