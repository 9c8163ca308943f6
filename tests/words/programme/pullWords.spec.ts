import { describe, expect, it } from 'vitest'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import {
  dueLine,
  keptForWords,
  pullBlocksWords,
  pullDecisionWords,
  pullDescription,
  pullTitle,
  seriesWords,
  windowDaysWords,
  windowWords,
} from '#words/programme/pullWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const pull: PullSummary = {
  ...{ studyId: 1, gluedOn: '2031-08-31', ageMonths: 6, key: '1-0-6', sequence: 1, studyTitle: 'Loft', demo: false },
  ...{ plannedOn: '2032-02-29', dueOn: '2032-02-29', windowDays: 14, state: 'planned', added: false },
  ...{ blocks: { planned: 12, waiting: 12, broken: 0, lost: 0 }, decision: null },
}

it('calls a pull by its age and its study', () => {
  expect(pullTitle(pull)).toBe('Pull after 6 months: Loft')
  expect(pullTitle({ ...pull, ageMonths: 0 })).toBe('Pull at once: Loft')
})

describe('the description of a pull', () => {
  it('says when its blocks were glued, how many they are, and its window', () => {
    expect(pullDescription(pull, null)).toBe('Glued on 31 Aug 2031.\n12 blocks.\nUp to 14 days early or late.')
  })

  it('says what was decided, and why', () => {
    expect(pullDescription({ ...pull, dueOn: '2032-03-10' }, 'store closed')).toMatch(
      /Planned for 29 Feb 2032\.\nReason: store closed$/,
    )
  })

  it('does not change when blocks are broken, which nobody decided', () => {
    const broken = { ...pull, state: 'done' as const, blocks: { planned: 12, waiting: 0, broken: 11, lost: 1 } }
    expect(pullDescription(broken, null)).toBe(pullDescription(pull, null))
  })
})

it('says what became of the blocks', () => {
  expect(pullBlocksWords({ planned: 12, waiting: 3, broken: 8, lost: 1 }, true)).toBe('3 waiting, 8 broken, 1 lost')
  expect(pullBlocksWords({ planned: 12, waiting: 0, broken: 0, lost: 0 }, false)).toBe('12 blocks, not glued yet')
  expect(pullBlocksWords({ planned: 0, waiting: 0, broken: 0, lost: 0 }, false)).toBe('not allocated yet')
})

it('says in one line what there is to do, what is late first', () => {
  expect(dueLine([{ state: 'due' }, { state: 'late' }, { state: 'due' }, { state: 'done' }])).toBe(
    'Pulls: 1 late, 2 due',
  )
  expect(dueLine([{ state: 'planned' }, { state: 'skipped' }])).toBeNull()
})

it('names what a series has in common', () => {
  const series = { adhesive: 'casein C1', jointType: '', gapMm: 0, exposure: 'loft' }
  const words = (gapMm: number | null, system: 'SI' | 'US' = 'SI') =>
    plainText(seriesWords({ ...series, gapMm }, quantitiesIn(system).length))
  expect(words(0)).toBe('casein C1, tight joint, loft')
  expect(words(0.5)).toBe('casein C1, gap 0.5 mm, loft')
  expect(words(0.5, 'US')).toBe('casein C1, gap 0.02 in, loft')
  expect(words(null)).toBe('casein C1, loft')
})

it('a window of no days is the day itself', () => {
  expect(windowWords(0)).toBe('On the day itself.')
  expect(windowWords(1)).toBe('Up to 1 day early or late.')
})

it.each([
  ['2031-02-20', 7, '13 Feb to 27 Feb 2031'],
  ['2031-12-28', 7, '21 Dec 2031 to 4 Jan 2032'],
  ['2031-02-20', 0, '20 Feb 2031'],
  ['2031-02-01', 7, '1 Feb to 8 Feb 2031'],
])('says from which day to which a pull of %s may be made, %i days early or late', (dueOn, windowDays, words) =>
  expect(windowDaysWords({ dueOn, windowDays, gluedOn: '2031-02-01' })).toBe(words),
)

it('says for which pull a block is kept, and when that is due while it waits', () => {
  expect(keptForWords(12, { dueOn: '2031-08-31', state: 'soon' })).toBe('for the pull after 1 year: 31 Aug 2031, soon')
  expect([keptForWords(0, null), keptForWords(null, null)]).toEqual(['for the pull at once', 'a spare'])
})

it('says who decided what about a pull, and from which day it was moved', () => {
  const words = (kind: 'moved' | 'skipped' | 'restored') =>
    pullDecisionWords({ plannedOn: '2031-02-28' }, { kind, by: 'Ada', reason: 'closed' } as never)
  expect(words('moved')).toBe('moved from 28 Feb 2031 by Ada: closed')
  expect([words('skipped'), words('restored')]).toEqual([
    'skipped by Ada: closed',
    'set as planned again by Ada: closed',
  ])
})
