import { describe, expect, it } from 'vitest'
import { createSampleHistory, mostHistorySamples } from '#domain/signal/stream/sampleHistory.ts'

describe('the history', () => {
  it('keeps what is young enough, through many rounds of its ring', () => {
    const history = createSampleHistory(2, 10)
    for (let i = 0; i < 50_000; i++) history.push(i / 1000, i, -i)
    expect(history.count()).toBe(2001)
    expect(history.timeAt(0)).toBeCloseTo(47.999, 9)
    expect(history.forceAt(2000)).toBe(49_999)
    expect(history.readingAt(2000)).toBe(-49_999)
    expect(history.firstAtOrAfter(49)).toBe(1001)
    expect(history.firstAtOrAfter(100)).toBe(2001)
  })

  it('keeps the fewest samples however old they are', () => {
    const history = createSampleHistory(2, 10)
    for (let i = 0; i < 30; i++) history.push(i * 100, i, i)
    expect(history.count()).toBe(11)
    history.clear()
    expect(history.count()).toBe(0)
  })

  it('never keeps more than fit', () => {
    const history = createSampleHistory(1e9, 10)
    for (let i = 0; i < mostHistorySamples + 5000; i++) history.push(i, i, i)
    expect(history.count()).toBe(mostHistorySamples)
    expect(history.forceAt(0)).toBe(5000)
  })
})
