import { describe, expect, it } from 'vitest'
import { namedAxis, placesOn, spanAxis, valueAxis } from '#figures/axes/axis.ts'

describe('valueAxis', () => {
  it('holds every value between round numbers that it names', () => {
    const { from, to, ticks } = valueAxis([0, 49, 559.28])
    expect([from, to]).toEqual([0, 600])
    expect([ticks[0]?.label, ticks.at(-1)?.label]).toEqual(['0', '600'])
  })
  it('names steps below 1 with as many decimals as they need, and a true minus sign', () => {
    const { from, to, ticks } = valueAxis([-0.031, 0.044])
    expect(from).toBeLessThanOrEqual(-0.031)
    expect(to).toBeGreaterThanOrEqual(0.044)
    expect(ticks.map(({ label }) => label)).toContain('−0.02')
    expect(new Set(ticks.map(({ label }) => label)).size).toBe(ticks.length)
  })
  it('gives room to values that are all alike', () => {
    const { from, to } = valueAxis([3, 3])
    expect(from).toBeLessThan(3)
    expect(to).toBeGreaterThan(3)
  })
  it('stands for 0 to 1 when there is nothing to draw, and passes over what is not finite', () => {
    expect(valueAxis([])).toMatchObject({ from: 0, to: 1 })
    expect(valueAxis([Number.NaN, 0, 1, Number.POSITIVE_INFINITY])).toMatchObject({ from: 0, to: 1 })
  })
})

describe('namedAxis', () => {
  it('gives each name a place of equal width', () => {
    const axis = namedAxis(['a', 'b'])
    expect(axis.ticks.map(({ value }) => placesOn(axis, 0, 100)(value))).toEqual([25, 75])
  })
  it('has a width without any name', () => {
    const { from, to } = namedAxis([])
    expect(to).toBeGreaterThan(from)
  })
})

describe('spanAxis', () => {
  it('begins and ends where it is told to, and names round values between', () => {
    const { from, to, ticks } = spanAxis(0.3, 11.4, 6)
    expect([from, to]).toEqual([0.3, 11.4])
    expect(ticks.every(({ value }) => value >= from && value <= to)).toBe(true)
    expect(ticks.length).toBeGreaterThan(2)
  })
  it('has a width for one value alone', () => {
    const { from, to } = spanAxis(2, 2, 5)
    expect(to).toBeGreaterThan(from)
  })
})
