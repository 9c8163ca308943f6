import { describe, expect, it } from 'vitest'
import { storedSeries } from '#domain/climate/storedSeries.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'

const broken = (strengthMPa: number, startedAt: string, change: Partial<ObservedBreak> = {}): ObservedBreak => ({
  ...{ specimenId: 1, breakId: 1, number: '1', adhesive: 'casein C1', jointType: 'lap', bondLineGapMm: 0 },
  ...{ exposure: 'loft', gluedOn: '2026-01-01', startedAt, areaMm2: null, peakN: null, strengthMPa, board: null },
  ...{
    woodFailurePercent: null,
    setAside: null,
    simulated: false,
    ageMonths: null,
    studyId: null,
    pullAgeMonths: null,
    ...change,
  },
})

describe('the series of blocks in a store', () => {
  it('has at each age the mean, its t interval and the day in the middle', () => {
    const days = ['2027-01-01', '2027-01-02', '2027-01-05'].map((one) => `${one}T10:00:00.000Z`)
    const [series] = storedSeries([9, 10, 14].map((strength, i) => broken(strength, days[i]!)))
    // t(0.975; 2) = 4.302653 (NIST/SEMATECH e-Handbook 1.3.6.7.2); mean 11, s = sqrt(7)
    const half = (4.302653 * Math.sqrt(7)) / Math.sqrt(3)
    expect(series!.ages).toEqual([
      {
        ...{ ageMonths: 12, n: 3, meanMPa: 11, brokenS: Date.parse(days[1]!) / 1000 },
        ...{ lowMPa: expect.closeTo(11 - half, 4), highMPa: expect.closeTo(11 + half, 4) },
      },
    ])
    expect(series!.gluedS).toBe(Date.parse('2026-01-01') / 1000)
  })

  it('parts what was made otherwise, and leaves out what does not count', () => {
    const at = '2027-01-01T00:00:00.000Z'
    const found = storedSeries([
      broken(9, at),
      broken(10, at, { adhesive: 'epoxy E4', simulated: true }),
      broken(11, at, { adhesive: 'resorcinol R2', setAside: 'slipped' }),
    ])
    expect(found.map(({ adhesive, simulated }) => [adhesive, simulated])).toEqual([
      ['casein C1', false],
      ['epoxy E4', true],
    ])
  })
})
