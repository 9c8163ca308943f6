import { describe, expect, it } from 'vitest'
import { ageAxis } from '#figures/findings/ageAxis.ts'

const labels = (lastSeen: number, end: number) => ageAxis(lastSeen, end).axis.ticks.map(({ label }) => label)

describe('the axis of ages', () => {
  it('spaces ages by their square root while those seen are a small part of the whole, and says so', () => {
    const { place, title, axis } = ageAxis(24, 360)
    expect(title).toBe('age, years, spaced by its square root')
    expect(place(144)).toBe(12)
    expect(axis.ticks.at(-1)).toEqual({ value: Math.sqrt(360), label: '30' })
  })

  it('is even once a good part was seen', () => {
    const { place, title } = ageAxis(180, 360)
    expect(title).toBe('age, years')
    expect(place(144)).toBe(144)
    expect(labels(180, 360)).toEqual(['0', '5', '10', '15', '20', '30'])
  })

  it('counts months where the end is near', () => {
    expect(ageAxis(12, 24).title).toBe('age, months')
    expect(labels(12, 24)).toEqual(['0', '3', '6', '12', '24'])
  })

  it('names the end, and no two ages that would touch', () => {
    expect(labels(24, 252).at(-1)).toBe('21')
    for (const [seen, end] of [
      [24, 360],
      [24, 252],
      [3, 12],
      [0, 1200],
    ] as const) {
      const { axis } = ageAxis(seen, end)
      const values = axis.ticks.map(({ value }) => value)
      for (let i = 1; i < values.length; i++)
        expect(values[i]! - values[i - 1]!).toBeGreaterThanOrEqual((axis.to - axis.from) / 16)
    }
  })

  it('stands with nothing seen and no end', () => {
    expect(ageAxis(0, 0).axis.ticks.length).toBeGreaterThan(0)
  })
})
