import { describe, expect, it } from 'vitest'
import { overallStanding } from '#domain/findings/overall.ts'
import { overallTable } from '#domain/findings/overallTable.ts'

const blocks = (adhesive: string, condition: string, ...strengths: number[]) =>
  strengths.map((strengthMPa) => ({ adhesive, condition, strengthMPa }))
const conditions = [
  { key: 'loft', weight: 2 },
  { key: 'bilge', weight: 1 },
]
const all = [
  ...blocks('R2', 'loft', 8.0, 8.8, 7.9, 8.1, 8.4),
  ...blocks('R2', 'bilge', 5.0, 5.9, 5.1, 5.6),
  ...blocks('E4', 'loft', 9.1, 10.2, 8.7, 9.9),
  ...blocks('E4', 'bilge', 4.1, 5.2, 4.4),
  ...blocks('C1', 'loft', 16, 17, 16.5),
]

describe('the table of standings', () => {
  // R 4.2.2, as in overall.spec.ts: numericDeriv and Welch-Satterthwaite over the same strengths
  it('has the weighted standing that R finds, and each condition by itself', () => {
    const e4 = overallTable(all, conditions, 'R2', 0.95).find(({ adhesive }) => adhesive === 'E4')!
    expect(e4.overall.ratio).toBeCloseTo(1.048478765, 8)
    expect(e4.overall.low).toBeCloseTo(0.957131796, 6)
    const [loft, bilge] = e4.conditions
    expect(loft!.ratio).toBeCloseTo(9.475 / 8.24, 10)
    expect(bilge!.ratio).toBeCloseTo(13.7 / 3 / 5.4, 10)
    const alone = overallStanding(
      [{ name: '', weight: 1, strengths: [9.1, 10.2, 8.7, 9.9], reference: [8.0, 8.8, 7.9, 8.1, 8.4] }],
      0.95,
    )
    expect(loft!.low).toBe(alone.low)
  })
  it('puts the highest ratio first, without the reference, and says who is missing where', () => {
    const rows = overallTable(all, conditions, 'R2', 0.95)
    expect(rows.map(({ adhesive }) => adhesive)).toEqual(['C1', 'E4'])
    expect(rows[0]!.overall.missing).toEqual(['bilge'])
    expect(rows[0]!.conditions[1]!.ratio).toBeNull()
  })
  it('has no ratio beside a reference without blocks', () => {
    expect(overallTable(all, conditions, 'U3', 0.95).every(({ overall }) => overall.ratio === null)).toBe(true)
  })
})
