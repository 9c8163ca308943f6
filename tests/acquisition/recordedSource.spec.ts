import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createRecordedSource, type RecordedSourceOptions } from '#acquisition/recordedSource.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'

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
