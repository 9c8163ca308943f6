import { beforeAll, describe, expect, it } from 'vitest'
import { type EventFigures, eventTotals, measureAllEvents } from './eventFigures.ts'

/*
 * Seeded curves of every scenario of the physical bench model at 10 Hz to 5 kHz, with noise of 0.02 % to 1 % of the peak,
 * through the live detector. The model shares no code with the detector. The same figures for more seeds, as a table:
 * npm run soak -- events.
 */

describe('events of curves of known truth', () => {
  let rows: EventFigures[]
  let totals: ReturnType<typeof eventTotals>
  beforeAll(() => {
    rows = measureAllEvents(1, 3)
    totals = eventTotals(rows)
  })

  it('come from at least 300 curves', () => {
    expect(totals.curves).toBeGreaterThanOrEqual(300)
    expect(totals.due).toBeGreaterThanOrEqual(200)
  })

  it('hold at least 98 % of the drops that exceed 5 % of the load and 6 noise SDs', () => {
    expect(totals.found / totals.due).toBeGreaterThanOrEqual(0.98)
  })

  it('hold a drop that is none on no more than 1 % of the curves without one', () => {
    expect(totals.plainCurves).toBeGreaterThanOrEqual(250)
    expect(totals.plainFalse / totals.plainCurves).toBeLessThanOrEqual(0.01)
  })

  it('leave the peak within noise of the highest sample without noise', () => {
    // The highest of a million normal values lies below 6 SDs: R 1e6 * pnorm(-6) = 0.00099.
    for (const row of rows) expect(row.faults).toEqual([])
    expect(totals.peakErrorSDs).toBeLessThan(6)
  })

  it('know the load of a pop-in to within noise, and stick-slip by its mean drop and period', () => {
    for (const row of rows) {
      // Where noise is next to nothing, what is left is how straight the load was and how long a mean is.
      if (row.popInErrorSDs > 4) expect(row.popInErrorPercent).toBeLessThan(0.5)
      expect(row.meanDropErrorPercent).toBeLessThan(5 + 600 * row.noiseShare)
      // A period of half a second or more, told by the samples at its ends.
      expect(row.periodErrorPercent).toBeLessThan(row.rateHz > 10 ? 2 : 10)
    }
  })
})
