import { describe, expect, it } from 'vitest'
import { pullDecision } from '#contract/programme/pull.ts'
import { sightOf } from '#domain/findings/ageing/shelf.ts'
import { shelfOutlook } from '#domain/findings/next/shelfOutlook.ts'
import type { PullSource } from '#domain/programme/calendar/studyPulls.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import { plannedStudy } from '#tests/fakes/scripted/plannedStudies.ts'

const today = '2028-05-02'
const certainty = { confidence: 0.95, power: 0.8 }
const series = { adhesive: 'casein C1', jointType: 'long grain to long grain', gapMm: 0, exposure: 'loft' }
const gluedOn = '2026-04-20'
const ages = [0, 12, 24, 120, 240]
const count = (ageMonths: number | null, change: Partial<SeriesCount> = {}): SeriesCount => ({
  ...{ ...series, gluedOn, ageMonths, planned: 12, lost: 0 },
  ...(ageMonths !== null && ageMonths <= 24 ? { broken: 12, waiting: 0 } : { broken: 0, waiting: 12 }),
  ...change,
})
const counts = ages.map((age) => count(age))
const sourceOf = (rows: readonly SeriesCount[], change: Partial<PullSource> = {}) =>
  plannedStudy({ agesMonths: ages, windowDays: 14 }, { counts: rows, ...change })
const outlook = (
  percentPerYear: number,
  rows: readonly SeriesCount[] = counts,
  change: Partial<PullSource> = {},
  cvPercent: number | null = 15,
) =>
  shelfOutlook(sourceOf(rows, change), rows, {
    ...{ today, changePercentPerYear: percentPerYear },
    spreadOf: () => (cvPercent === null ? null : { cvPercent, from: 'series' }),
  })[0]!

describe('what the shelf of a series can still show', () => {
  it('is what all pulls show, each on the day on which it is due, those that were made left out', () => {
    const { sights, waiting, free } = outlook(1)
    const all = sightOf(
      ages.map((ageMonths) => ({ ageMonths, blocks: 12, isDone: ageMonths <= 24 })),
      15,
      certainty,
    )
    expect(sights).toEqual([
      { ...all.find(({ ageMonths }) => ageMonths === 120), day: '2036-04-20' },
      { ...all.find(({ ageMonths }) => ageMonths === 240), day: '2046-04-20' },
    ])
    expect([waiting, free]).toEqual([24, 0])
  })

  it('sees the change that is asked after with a pull to come, already, or never', () => {
    expect(outlook(1).seen).toEqual({ ageMonths: 240, day: '2046-04-20', isDone: false })
    expect(outlook(20).seen).toMatchObject({ isDone: true })
    expect(outlook(0.1).seen).toBeNull()
  })

  it('moves nothing where the change was seen already, and else what shows it sooner or more of it', () => {
    expect(outlook(20).move).toBeNull()
    // 0.728 a year as planned, less with blocks of ten years brought to twenty
    expect(outlook(0.7).move).toMatchObject({
      fromMonths: 120,
      toMonths: 240,
      blocks: 9,
      seenMonths: 240,
      seenOn: '2046-04-20',
    })
    expect(outlook(0.1).move).toMatchObject({ fromMonths: 120, toMonths: 240, seenMonths: null, seenOn: null })
  })

  it('counts blocks of a missed pull as free, and those that were broken in it', () => {
    const missed = counts.with(2, count(24, { broken: 4, waiting: 8 }))
    const { free, sights } = shelfOutlook(sourceOf(missed), missed, {
      ...{ today: '2028-08-01', changePercentPerYear: 1 },
      spreadOf: () => ({ cvPercent: 15, from: 'plan' }),
    })[0]!
    expect(free).toBe(8)
    const pulls = ages.map((ageMonths) => ({ ageMonths, blocks: ageMonths === 24 ? 4 : 12, isDone: ageMonths <= 24 }))
    expect(sights.at(-1)!.changePercentPerYear).toBe(sightOf(pulls, 15, certainty).at(-1)!.changePercentPerYear)
  })

  it('has the day to which a pull was moved', () => {
    const moved = pullDecision.parse({
      ...{ pullDecisionId: 1, recordedAt: '2027-01-01T00:00:00.000Z', by: 'bench', reason: 'away', studyId: 1 },
      ...{ gluedOn: null, ageMonths: 240, kind: 'moved', dueOn: '2046-06-01', blocksPerSeries: null },
    })
    expect(outlook(1, counts, { decisions: [moved] }).seen!.day).toBe('2046-06-01')
  })

  it('says nothing where no spread is known', () => {
    expect(outlook(1, counts, {}, null)).toMatchObject({
      cvPercent: null,
      cvFrom: null,
      sights: [],
      seen: null,
      move: null,
    })
  })

  it('is told for each day of glue-up by itself', () => {
    const later = counts.map((one) => ({ ...one, gluedOn: '2026-06-20' }))
    const both = [...counts, ...later]
    const found = shelfOutlook(sourceOf(both), both, {
      ...{ today, changePercentPerYear: 1 },
      spreadOf: () => ({ cvPercent: 15, from: 'results' }),
    })
    expect(found.map((one) => [one.gluedOn, one.seen!.day])).toEqual([
      [gluedOn, '2046-04-20'],
      ['2026-06-20', '2046-06-20'],
    ])
  })
})
