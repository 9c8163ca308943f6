import { describe, expect, it } from 'vitest'
import { climateOutcome, loggerRows } from '#exchange/climate/loggerOutcome.ts'

const file = (newestFirst = false) => ({
  readings: {
    row: newestFirst ? Float64Array.of(5, 3, 2) : Float64Array.of(2, 3, 5),
    timeS: Float64Array.of(0, 60, 600),
    temperature: Float64Array.of(1, 2, 3),
    humidityPercent: Float64Array.of(60, Number.NaN, 62),
  },
  rejected: [{ row: 4, reason: 'Row 4: its time goes back behind that of row 3.' }],
  rejectedCount: 1,
  newestFirst,
})
const said = { fileSha256: 'ab', dryRun: true }

describe('what an import of readings came to', () => {
  it('is every row in the order of the file, each with its fate', () => {
    const rows = [...loggerRows(file(), Uint8Array.of(0, 1, 2))]
    expect(rows.map(({ row, fate, humidityPercent }) => [row, fate, humidityPercent])).toEqual([
      [2, 'new', 60],
      [3, 'already-there', null],
      [4, 'rejected', null],
      [5, 'rejected', 62],
    ])
    expect(rows[3]!.reason).toMatch(/^Row 5: another reading is kept for this time/)
  })

  it('is counted, with the span and the gaps of the file', () => {
    expect(climateOutcome(file(), Uint8Array.of(0, 1, 2), said)).toMatchObject({
      ...{ new: 1, alreadyThere: 1, rejected: 2, fromS: 0, toS: 600, ...said },
      ...{ gapCount: 0, gaps: [] },
    })
  })

  it('is in the order of the file also where the newest stands first', () => {
    expect([...loggerRows(file(true), new Uint8Array(3))].map(({ row }) => row)).toEqual([2, 3, 4, 5])
  })

  it('shows no more rows than a page can', () => {
    const count = 2000
    const many = {
      readings: {
        row: Float64Array.from({ length: count }, (_, i) => 2 + 2 * i),
        timeS: Float64Array.from({ length: count }, (_, i) => 60 * i),
        temperature: new Float64Array(count),
        humidityPercent: new Float64Array(count),
      },
      rejected: Array.from({ length: 1000 }, (_, i) => ({ row: 3 + 2 * i, reason: `Row ${3 + 2 * i}: …` })),
      ...{ rejectedCount: 1500, newestFirst: false },
    }
    const found = climateOutcome(many, new Uint8Array(count), said)
    expect(found.rejected).toBe(1500)
    expect(found.rows.length).toBeLessThan(450)
    expect(found.rows.filter(({ fate }) => fate === 'rejected')).toHaveLength(400)
  })
})
