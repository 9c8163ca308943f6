import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createSignalBlocks } from '#domain/signal/rest/signalBlocks.ts'

describe('the newest blocks of a signal', () => {
  it('are the sixteenths of the window, each with count, mean and squares, as sorting all samples gives them', () => {
    const random = createRandom(9)
    const blocks = createSignalBlocks(1.6)
    let members: { startS: number; values: number[] }[] = []
    let firstS = Number.NaN
    let lastS = Number.NaN
    for (let i = 0, timeS = 3; i < 1500; i++) {
      timeS += random.unit() < 0.002 ? random.between(0.5, 3) : random.between(0.001, 0.03)
      const value = 1e6 + random.normal()
      blocks.push(timeS, value)
      if (members.length > 0 && timeS - lastS > 1.6) members = []
      if (members.length === 0) firstS = timeS
      lastS = timeS
      const newest = members.at(-1)
      if (newest === undefined || timeS >= newest.startS + 0.1) members.push({ startS: timeS, values: [value] })
      else newest.values.push(value)
      members = members.slice(-16)
      expect(blocks.used()).toBe(members.length)
      expect(blocks.watchedS()).toBeCloseTo(timeS - firstS, 9)
      const from = Math.floor(random.between(0, members.length))
      const to = from + 1 + Math.floor(random.between(0, members.length - from))
      const sets = members.slice(from, to).map(({ values }) => values)
      const all = sets.flat()
      const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one - 1e6, 0) / values.length
      const about = (values: readonly number[]) => values.reduce((sum, one) => sum + (one - 1e6 - mean(values)) ** 2, 0)
      const joined = blocks.joined(from, to)
      expect(joined.n).toBe(all.length)
      expect(joined.mean - 1e6).toBeCloseTo(mean(all), 7)
      expect(joined.squares).toBeCloseTo(about(all), 6)
      expect(joined.within).toBeCloseTo(
        sets.reduce((sum, values) => sum + about(values), 0),
        6,
      )
    }
  })

  it('are none at first, and again after a reset', () => {
    const blocks = createSignalBlocks(1)
    expect([blocks.used(), blocks.watchedS(), blocks.joined(0, 0).n]).toEqual([0, Number.NaN, 0])
    blocks.push(5, 1)
    blocks.push(5.5, 1)
    expect([blocks.used(), blocks.watchedS()]).toEqual([2, 0.5])
    blocks.reset()
    expect([blocks.used(), blocks.watchedS()]).toEqual([0, Number.NaN])
    blocks.push(9, 1)
    expect([blocks.used(), blocks.watchedS()]).toEqual([1, 0])
  })

  it('end a sixteenth of the window after their first sample', () => {
    const after = (laterS: number) => {
      const blocks = createSignalBlocks(16)
      blocks.push(0, 1)
      blocks.push(laterS, 1)
      return blocks.used()
    }
    expect([0.999, 1].map(after)).toEqual([1, 2])
  })

  it('outlast a silence as long as the window, and no longer one', () => {
    const after = (silenceS: number) => {
      const blocks = createSignalBlocks(1)
      blocks.push(0, 1)
      blocks.push(silenceS, 1)
      return blocks.used()
    }
    expect([1, 1.001].map(after)).toEqual([2, 1])
  })
})
