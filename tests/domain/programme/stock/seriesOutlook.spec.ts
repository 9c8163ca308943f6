import { describe, expect, it } from 'vitest'
import { type CellStock, seriesOutlook } from '#domain/programme/stock/seriesOutlook.ts'

const wanted = { cvPercent: 10, confidence: 0.95, power: 0.8 }
const cell = (ageMonths: number, differs: Partial<CellStock> = {}): CellStock => ({
  ageMonths,
  planned: 12,
  waiting: 12,
  broken: 0,
  lost: 0,
  closed: false,
  ...differs,
})

describe('lost blocks', () => {
  it('are filled from the spares, the earliest age first', () => {
    const cells = [cell(24, { waiting: 9, lost: 3 }), cell(12, { waiting: 10, lost: 2 }), cell(36)]
    const { ages, free } = seriesOutlook(cells, 4, wanted)
    expect(ages.map(({ ageMonths, atHand, filled, blocks }) => [ageMonths, atHand, filled, blocks])).toEqual([
      [12, 10, 2, 12],
      [24, 9, 2, 11],
      [36, 12, 0, 12],
    ])
    expect(free).toBe(0)
  })

  it('make the smallest difference that is found larger', () => {
    // R 4.2.2: 10 * power.t.test(n = 12 | 9, power = 0.8, sd = 1, strict = TRUE, tol = 1e-12)$delta
    const [age] = seriesOutlook([cell(12, { waiting: 9, lost: 3 })], 0, wanted).ages
    expect(age!.detectableAsPlannedPercent).toBeCloseTo(11.9681191375, 4)
    expect(age!.detectablePercent).toBeCloseTo(14.0692713277, 4)
  })

  it('leave nothing to compare where fewer than two are left', () => {
    expect(seriesOutlook([cell(12, { waiting: 1, lost: 11 })], 0, wanted).ages[0]!.detectablePercent).toBeNull()
  })
})

it('blocks of a missed or skipped pull are free for later ages', () => {
  const cells = [cell(6, { waiting: 5, broken: 7, closed: true }), cell(12, { waiting: 8, lost: 4 })]
  const { ages, free } = seriesOutlook(cells, 1, wanted)
  expect(ages.map(({ ageMonths, filled }) => [ageMonths, filled])).toEqual([[12, 4]])
  expect(free).toBe(2)
})

it('more blocks than were planned are not taken away', () => {
  expect(seriesOutlook([cell(12, { planned: 10 })], 0, wanted).ages[0]).toMatchObject({ filled: 0, blocks: 12 })
})
