import { describe, expect, it } from 'vitest'
import { createVirtualSource, type VirtualSourceOptions } from '#acquisition/virtual/virtualSource.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { readLines } from '#tests/fakes/streams/readLines.ts'

function listenTo(options: VirtualSourceOptions) {
  const clock = movedClock()
  const source = createVirtualSource(options, clock)
  const told: string[] = []
  const sequences: number[] = []
  const arrivals: number[] = []
  const parser = readLines(
    source.lineFormat,
    (_value, _timeUs, sequence) => sequences.push(sequence),
    () => told.push('rejected'),
  )
  const opened = source.open({
    bytes(chunk, arrivalS) {
      parser.push(chunk)
      arrivals.push(arrivalS)
    },
    lost: (trouble) => told.push(trouble.code),
    restored: () => told.push('restored'),
    ended: () => told.push('ended'),
  })
  return { clock, source, told, sequences, arrivals, opened }
}

describe('virtual source', () => {
  it('keeps pace with the clock and sends in bursts', async () => {
    const { clock, sequences, arrivals, source } = listenTo({ scenario: 'brittle', rateHz: 1000, seed: 1 })
    await clock.move(2)
    expect(sequences.length).toBeGreaterThan(1960)
    expect(sequences.length).toBeLessThanOrEqual(2000)
    expect(arrivals.length).toBeGreaterThan(100)
    expect(arrivals.length).toBeLessThan(150)
    await source.close()
    await clock.move(2)
    expect(sequences.length).toBeLessThanOrEqual(2000)
  })

  it('runs faster than the clock when asked, and ends after the last specimen with every sample given', async () => {
    const { clock, source, told, sequences } = listenTo({
      scenario: 'mixed',
      rateHz: 80,
      seed: 2,
      breaks: 2,
      speed: 50,
    })
    await clock.move(10)
    expect(told).toEqual(['ended'])
    expect(source.truths()).toHaveLength(2)
    const dropped = source.truths().reduce((sum, truth) => sum + truth.droppedSamples, 0)
    expect(sequences.length + dropped).toBe(sequences.at(-1)! + 1)
  })

  it('falls behind rather than hold up the program when more is asked of it than it can make', async () => {
    const { clock, sequences, source } = listenTo({ scenario: 'idle', rateHz: 10_000, seed: 1, speed: 1000 })
    await clock.move(0.1)
    await source.close()
    // Six bursts of at most 20,000 samples, nothing skipped.
    expect(sequences.length).toBeLessThanOrEqual(120_000)
    expect(sequences.at(-1)).toBe(sequences.length - 1)
  })

  it('loads the next specimen at once when asked', async () => {
    const { clock, source } = listenTo({
      scenario: 'brittle',
      rateHz: 80,
      seed: 1,
      breaks: 1,
      restS: [500, 500],
      speed: 10,
    })
    await clock.move(1)
    source.loadNow()
    await clock.move(20)
    expect(source.truths()).toHaveLength(1)
    expect(source.truths()[0]!.onsetTimeS).toBeLessThan(11)
  })

  it('is lost and comes back when it is unplugged, and the samples of the time between are missing', async () => {
    const { clock, told, sequences, source } = listenTo({
      scenario: 'idle',
      rateHz: 100,
      seed: 1,
      unplugs: [{ atS: 2, forS: 1.5 }],
    })
    await clock.move(3)
    expect(told).toEqual(['port-lost'])
    expect(sequences.at(-1)).toBe(199)
    await clock.move(2)
    await source.close()
    expect(told).toEqual(['port-lost', 'restored'])
    expect(sequences[200]).toBe(350)
  })

  it('tells what it knows of its cell', () => {
    const { source } = listenTo({ scenario: 'clipping', rateHz: 80, seed: 1 })
    expect(source.label).toBe('virtual amplifier: clipping')
    expect(source.capacityN).toBe(25_000)
    expect(source.nPerCount).toBe(0.01)
    expect(source.endCodes).toEqual([-524_288, 524_287])
  })
})
