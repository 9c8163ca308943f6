import { describe, expect, it } from 'vitest'
import type { NextAnswer, ShelfSeries, UndecidedGroup } from '#contract/findings/next.ts'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import {
  dueSentence,
  moveSentences,
  nextSentences,
  nothingDueWords,
  nothingOnShelfWords,
  shelfSentences,
  suspiciousSentence,
  undecidedSentences,
  yearlyWords,
} from '#words/findings/nextWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const name = (group: string) => group
const sight = (ageMonths: number, day: string, changePercentPerYear: number) => ({
  ...{ ageMonths, day, changePercentPerYear, changePercent: (changePercentPerYear * ageMonths) / 12 },
})
const shelf = (change: Partial<ShelfSeries> = {}): ShelfSeries => ({
  ...{ adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft', studyId: 1, studyTitle: 'Loft' },
  ...{ gluedOn: '2026-04-20', waiting: 24, free: 3, cvPercent: 10, cvFrom: 'series' },
  sights: [sight(60, '2031-04-20', 2.1), sight(240, '2046-04-20', 0.62)],
  ...{ seen: { ageMonths: 240, day: '2046-04-20', isDone: false }, move: null },
  ...change,
})
const move: NonNullable<ShelfSeries['move']> = {
  ...{ fromMonths: 60, toMonths: 120, blocks: 9, seenMonths: 120, seenOn: '2036-04-20' },
  ...{ beforePercentPerYear: 0.62, afterPercentPerYear: 0.55 },
}

const { length } = quantitiesIn('SI')

describe('the whole answer', () => {
  const next: NextAnswer = {
    ...{ today: '2026-11-30', due: [], shelf: [shelf()], compared: 0, undecided: [], suspicious: [], groups: [] },
    ...{ references: [], confidence: 0.95, power: 0.8, computed: 0 },
  }
  const said = (change: Partial<NextAnswer>) =>
    nextSentences({ ...next, ...change }, { changePercentPerYear: 1, marginPercent: 10 }, name, quantitiesIn('SI'))

  it('says its day and what is watched of it, and every part, also where there is nothing to do', () => {
    expect(said({})).toEqual([
      expect.stringMatching(/^As it stood on 30 Nov 2026\. The results are watched/),
      nothingDueWords,
      expect.stringMatching(/^With the pulls left/),
      expect.stringMatching(/^No study names a reference/),
    ])
    expect(said({ shelf: [] })).toContain(nothingOnShelfWords)
  })

  it('names the results that are suspicious', () => {
    const far = (number: string) => ({
      ...{ group: 'C1', ageMonths: 6, specimenId: 1, breakId: null, number, strengthMPa: 2, meanMPa: 8 },
    })
    expect(said({ suspicious: [far('C-1'), far('C-2')] })).toContainEqual(
      expect.stringMatching(/^C1 at 6 months: 2 results lie far .*: C-1 and C-2\.$/),
    )
  })
})

describe('the sentences on the shelf', () => {
  const told = (...some: ShelfSeries[]) => shelfSentences(some, 1, 0.8)

  it('say by when a change is seen, with the chance of it, and in which years where series differ', () => {
    expect(told(shelf())).toEqual([
      'With the pulls left you will see a change of 1.0 % a year by 2046, in 1 series, with a chance of 80 %.',
    ])
    const sooner = shelf({ seen: { ageMonths: 60, day: '2031-04-20', isDone: false } })
    expect(told(shelf(), sooner)[0]).toMatch(/between 2031 and 2046, in 2 series/)
  })

  it('say that it is not seen, and what is at the end, on data that do not show it', () => {
    const [never] = told(shelf({ seen: null }))
    expect(never).toBe(
      'With the pulls left 1 series will not show a change of 1.0 % a year; at their end they show 0.62 % a year.',
    )
    expect(never).not.toMatch(/you will see/)
    expect(told(shelf({ seen: null, sights: [] }))[0]).toMatch(/no change at all/)
  })

  it('say that it would have been seen already, and that a spread is not known', () => {
    expect(told(shelf({ seen: { ageMonths: 24, day: '2028-04-20', isDone: true } }))[0]).toMatch(/already, in 1 series/)
    expect(told(shelf({ cvPercent: null, cvFrom: null, seen: null, sights: [] }))).toEqual([
      'Of 1 series the spread is not known: no result and no plan says it.',
    ])
    expect(told()).toEqual([])
  })
})

describe('the sentences on moves', () => {
  it('say one that several series share once, with the years', () => {
    const both = [shelf({ move }), shelf({ move, exposure: 'bilge' })]
    expect(moveSentences(both, length)).toEqual([
      'Moving 9 blocks of each of 2 series from the pull at 5 years to the one at 10 years would show it in 2036 instead of 2046.',
    ])
  })

  it('name the series where it is one, and never promise what the move does not show', () => {
    const [never] = moveSentences([shelf({ seen: null, move })], length)
    expect(never).toMatch(/^Moving 9 blocks of casein C1, lap, tight joint, loft .* in 2036 instead of never\.$/)
    const [sharper] = moveSentences([shelf({ seen: null, move: { ...move, seenMonths: null, seenOn: null } })], length)
    expect(sharper).toMatch(/would not show it either, but 0\.55 % a year at the end instead of 0\.62 % a year\.$/)
    expect(moveSentences([shelf()], length)).toEqual([])
  })

  it('give the range of what several series show at the end, whatever day they were glued on', () => {
    const at = (before: number, after: number, gluedOn: string) =>
      shelf({
        ...{ seen: null, gluedOn },
        move: {
          ...{ ...move, seenMonths: null, seenOn: null },
          ...{ beforePercentPerYear: before, afterPercentPerYear: after },
        },
      })
    const told = moveSentences([at(0.62, 0.55, '2026-04-20'), at(0.71, 0.6, '2026-04-22')], length)
    expect(told).toHaveLength(1)
    expect(told[0]).toMatch(
      /^Moving 9 blocks of each of 2 series .* but 0\.55 to 0\.60 % a year at the end instead of 0\.62 to 0\.71 % a year\.$/,
    )
  })
})

describe('the sentences on groups that are undecided', () => {
  const one: UndecidedGroup = {
    ...{ group: 'C1', reference: 'R2', ageMonths: 24, n: 8, referenceN: 12, cvPercent: 11, needed: 20 },
  }
  const told = (undecided: UndecidedGroup[], compared = 9, references = ['R2']) =>
    undecidedSentences(undecided, { references, compared, power: 0.8 }, 10, name)

  it('say how many blocks it takes, of how many, and neither better nor worse', () => {
    const [sentence] = told([one])
    expect(sentence).toBe(
      'C1 at 2 years is neither told from R2 nor shown to be alike: to find a difference of 10 % in 80 % of such studies each needs ' +
        '20 blocks; they have 8 and 12.',
    )
    expect(sentence).not.toMatch(/stronger|weaker|better|worse/)
  })

  it('say that none lacks blocks only where groups were compared', () => {
    expect(told([])).toEqual(['No group lacks blocks to find a difference of 10 % from the reference (R2).'])
    expect(told([], 0)[0]).toMatch(/^No group was broken beside the reference \(R2\)/)
    expect(told([], 0, [])[0]).toMatch(/^No study names a reference/)
  })

  it('leave those beyond five to the table', () => {
    expect(told(Array.from({ length: 7 }, () => one)).at(-1)).toMatch(/^2 more groups lack blocks too/)
  })
})

it('says what is to be done of a pull by how it stands', () => {
  const pull = (state: PullSummary['state']) =>
    dueSentence({
      ...{ state, studyTitle: 'Loft and bilge', ageMonths: 6, dueOn: '2026-10-20' },
      blocks: { planned: 12, waiting: 11, broken: 0, lost: 1 },
    } as PullSummary)
  expect(pull('late')).toBe(
    'Pull after 6 months: Loft and bilge is late: break its blocks now; 11 blocks waiting, its day 20 Oct 2026.',
  )
  expect(pull('missed')).toMatch(/was missed: decide/)
})

it('says of suspicious results of a group that they lie far out, and what to do', () => {
  const found = { group: 'C1', ageMonths: 6, specimenId: 1, breakId: 2, number: 'B-7', strengthMPa: 3, meanMPa: 9 }
  const words = (...results: (typeof found)[]) => suspiciousSentence(results, name, quantitiesIn('SI').strength)
  expect(words(found)).toMatch(/^C1 at 6 months: 1 result lies far from the others, whose mean with it is 9.00.MPa\./)
  expect(words(found, { ...found, number: 'B-8' })).toMatch(/: 2 results lie far .* with them is/)
  expect(() => words()).toThrow(RangeError)
})

it('writes a change a year with two figures', () => {
  expect([0.125, 12.4].map(yearlyWords)).toEqual(['0.13 % a year', '12 % a year'])
})
