import { describe, expect, it } from 'vitest'
import { calendarAxis } from '#figures/axes/calendarAxis.ts'

const at = (text: string) => Date.parse(`${text}Z`) / 1000
const labels = (from: string, to: string, count = 5) =>
  calendarAxis(at(from), at(to), count).ticks.map(({ label }) => label)

describe('an axis of time', () => {
  it('names years, months, days or hours, as the span asks', () => {
    expect(labels('2024-03-01T00:00', '2028-03-01T00:00')).toEqual(['2025', '2026', '2027', '2028'])
    expect(labels('2026-01-15T00:00', '2026-06-15T00:00')).toContain('Mar 2026')
    expect(labels('2026-01-01T00:00', '2026-01-11T00:00')).toContain('3 Jan')
    expect(labels('2026-01-01T00:00', '2026-01-02T00:00')[1]).toMatch(/1 Jan,? (?:at )?\d\d:\d\d/)
  })

  it('begins and ends where it is told, and has room about a lone moment', () => {
    const axis = calendarAxis(100, 1_000_000, 4)
    expect([axis.from, axis.to]).toEqual([100, 1_000_000])
    expect(calendarAxis(0, 0, 4)).toMatchObject({ from: -86_400, to: 86_400 })
  })
})
