import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createSampleHistory, mostHistorySamples } from '#domain/signal/stream/sampleHistory.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const counted = (count: number) => Float64Array.from({ length: count }, (_, i) => i)

describe('the history', () => {
  it.each([1, 9, 700, 50_000])('keeps what is young enough, however the stream is cut: blocks up to %i', (longest) => {
    const history = createSampleHistory(2, 2)
    const force = counted(50_000)
    const timeS = force.map((i) => i / 1000)
    for (const [from, to] of cutStream(createRandom(longest), 50_000, longest)) history.append([timeS, force], from, to)
    expect(history.copyFrom(0)).toEqual([timeS.slice(47_999), force.slice(47_999)])
    expect(history.firstAtOrAfter(49)).toBe(1001)
    expect(history.firstAtOrAfter(100)).toBe(2001)
    expect(history.copyNewest(0.002)[1]).toEqual(Float64Array.of(49_997, 49_998, 49_999))
  })

  it('keeps the fewest samples however old they are', () => {
    const history = createSampleHistory(1, 2, 10)
    for (let i = 0; i < 30; i++) history.append([Float64Array.of(i * 100)], 0, 1)
    expect(history.length()).toBe(11)
    history.clear()
    expect(history.length()).toBe(0)
    expect(history.copyNewest(5)).toEqual([new Float64Array(0)])
  })

  it('forgets what lies before a silence longer than the span', () => {
    const history = createSampleHistory(1, 1)
    history.append([Float64Array.of(0, 0.5, 60)], 0, 3)
    expect(history.copyFrom(0)).toEqual([Float64Array.of(60)])
  })

  it('never keeps more than fit', () => {
    const history = createSampleHistory(1, 1e9)
    history.append([counted(mostHistorySamples + 5000)], 0, mostHistorySamples + 5000)
    expect(history.length()).toBe(mostHistorySamples)
    expect(history.copyFrom(0)[0]![0]).toBe(5000)
  })

  it('refuses a span of nothing', () => {
    expect(() => createSampleHistory(1, 0)).toThrow(RangeError)
  })
})

describe('the newest of a history', () => {
  it('are one sample where there is one, and nothing where there is none', () => {
    const history = createSampleHistory(1, 10)
    expect(history.copyNewest(1)).toEqual([new Float64Array(0)])
    history.append([Float64Array.of(7)], 0, 1)
    expect(history.copyNewest(1)).toEqual([Float64Array.of(7)])
    history.append([Float64Array.of(7, 9)], 1, 1)
    history.append([Float64Array.of(7, 8, 9)], 1, 3)
    expect(history.copyNewest(1)).toEqual([Float64Array.of(8, 9)])
  })

  it('are as many as fit', () => {
    expect(mostHistorySamples).toBe(2 ** 18)
    const history = createSampleHistory(1, 2, 0)
    history.append([Float64Array.of(0, 1, 2, 3)], 0, 4)
    expect(history.copyFrom(0)).toEqual([Float64Array.of(1, 2, 3)])
  })
})
