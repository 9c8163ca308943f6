import { describe, expect, it } from 'vitest'
import type { FindingOf } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import {
  asGoodAnswer,
  changedAnswer,
  linesOf,
  listed,
  strongestAnswer,
  treatmentAnswers,
} from '#words/findings/answerWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { block } from '../../domain/findings/knownStudies.ts'

const name = (group: string) => group
const { strength } = quantitiesIn('SI')
/** Six blocks about a mean, MPa. */
const about = (group: string, mean: number, ageMonths = 0) =>
  [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5].map((step) => block({ group, ageMonths, strengthMPa: mean + step }))
const lines = (blocks: ReturnType<typeof about>, given: object = {}) => [
  ...findingLines(blocks, findingsOptions.parse({ reference: 'R2', marginPercent: 10, ...given })),
]
const rank = (group: string, at: number, low: number, high: number, firstShare: number): FindingOf<'rank'> => ({
  kind: 'rank',
  group,
  ageMonths: 0,
  rank: at,
  rankLow: low,
  rankHigh: high,
  firstShare,
})

describe('the answer to which is strongest', () => {
  it('names one that is first in every resampling, and the other one on opposite data', () => {
    const answer = (c1: number, e4: number) =>
      strongestAnswer(linesOf(lines([...about('C1', c1), ...about('E4', e4)]), 'rank', 0), name)
    expect(answer(5, 10)).toMatch(/^E4 is the strongest of 2 groups/)
    expect(answer(10, 5)).toMatch(/^C1 is the strongest of 2 groups/)
  })

  it('names none where the intervals of rank hold the first place for several', () => {
    const answer = strongestAnswer([rank('B', 2, 1, 3, 0.3), rank('A', 1, 1, 2, 0.6), rank('C', 3, 3, 3, 0)], name)
    expect(answer).toMatch(/^The data do not decide which of A and B is the strongest: A has the highest mean/)
    expect(answer).not.toMatch(/\bis the strongest of\b/)
  })

  it('names none where one alone may be first but others came first together as often', () => {
    const others = Array.from({ length: 40 }, (_, i) => rank(`G${i}`, i + 2, 2, 41, 0.0125))
    expect(strongestAnswer([rank('A', 1, 1, 5, 0.5), ...others], name)).toBe(
      'The data do not decide which of the 41 groups is the strongest: A has the highest mean and came first in 50 % of the resamplings.',
    )
    expect(strongestAnswer([rank('A', 1, 2, 41, 0.02), ...others], name)).toMatch(/which of the 41 groups/)
  })

  const oddly = (...groups: [string, number[]][]) =>
    strongestAnswer(
      linesOf(
        lines(
          groups.flatMap(([group, strengths]) =>
            strengths.map((strengthMPa) => block({ group, strengthMPa, ageMonths: 0 })),
          ),
        ),
        'rank',
        0,
      ),
      name,
    )

  it('names none of groups whose blocks are all equal', () => {
    expect(oddly(['A', [5, 5]], ['B', [5, 5, 5]])).toBe(
      'The data do not decide which of A and B is the strongest: A and B have the same mean.',
    )
  })

  it('names groups of one block that have no place', () => {
    expect(oddly(['A', [9, 9.1]], ['B', [5, 5.2]], ['C', [30]])).toMatch(
      /^A is the strongest of 2 groups: .*\. C has one block alone and no place\.$/,
    )
    expect(oddly(['A', [9, 9.1]], ['B', [5]], ['C', [30]])).toMatch(/^Only A .* B and C have one block each/)
    expect(oddly(['A', [9]], ['B', [5]])).toMatch(/^No group has two blocks/)
  })

  it('says that a group came first in all resamplings only where it did', () => {
    const often = (part: number) => strongestAnswer([rank('A', 1, 1, 1, part), rank('B', 2, 2, 2, 1 - part)], name)
    expect(often(1)).toContain('in 100 % of')
    expect(often(0.9996)).toContain('in more than 99 % of')
  })

  it('says that one group, or none, is no ranking', () => {
    expect(strongestAnswer([], name)).toMatch(/^No group/)
    expect(strongestAnswer([rank('A', 1, 1, 1, 1)], name)).toMatch(/^Only A/)
  })
})

describe('the answer to what changed', () => {
  const answer = (later: number, ageMonths = 24) =>
    changedAnswer(linesOf(lines([...about('C1', 10), ...about('C1', later, ageMonths)]), 'retention'), name)

  it('is a fall, a rise, or that no change can be told', () => {
    expect(answer(7, 1)).toMatch(/^C1 fell: at 1 month it/)
    expect(answer(7)).toMatch(/^C1 fell: at 24 months it held 70 % of its strength at 0 months/)
    expect(answer(13)).toMatch(/^C1 rose/)
    expect(answer(10.1)).toMatch(/^C1: no change can be told/)
  })

  it('is that nothing can be said where the first strength is too uncertain', () => {
    const wild = [0.1, 9, 0.2].map((strengthMPa) => block({ group: 'C1', ageMonths: 0, strengthMPa }))
    expect(changedAnswer(linesOf(lines([...wild, ...about('C1', 5, 24)]), 'retention'), name)).toMatch(
      /nothing can be said/,
    )
  })

  it('is none for a group of one age', () => {
    expect(changedAnswer([], name)).toBeNull()
  })
})

describe('the answer to whether a group is as good as the reference', () => {
  const answer = (mean: number, marginPercent = 10) => {
    const found = lines([...about('C1', mean), ...about('R2', 10)], { marginPercent })
    const [difference] = linesOf(found, 'against-reference', 0)
    return asGoodAnswer(
      difference!,
      linesOf(found, 'equivalence', 0).find(({ a, b }) => a === 'C1' && b === 'R2'),
      name,
      strength,
    )
  }
  // t(0.975, 10) = 2.2281, s = 0.3742 by hand: 2.2281 * 0.3742 * sqrt(2 / 6) = 0.481
  it('is stronger or weaker only where the interval holds no zero, by how much and with the interval', () => {
    expect(answer(15)).toBe('C1 is stronger than R2 by 5.00\u00a0MPa (4.52 to 5.48\u00a0MPa).')
    expect(answer(5)).toBe('C1 is weaker than R2 by 5.00\u00a0MPa (4.52 to 5.48\u00a0MPa).')
    expect(answer(10.05)).toBe(
      'C1 is not to be told from R2: its mean may lie from 0.43\u00a0MPa below to 0.53\u00a0MPa above; within 10 % of the mean of R2 they are alike.',
    )
  })

  it('says of a difference that is told and small both', () => {
    expect(answer(10.6, 20)).toMatch(/^C1 is stronger than R2 by 0\.60.*, yet by less than 20 % of the mean of R2\.$/)
  })

  it('asks for more blocks where neither a difference nor likeness is shown', () => {
    expect(answer(10.05, 1)).toMatch(/not shown to lie within 1 % of the mean of R2 either: more blocks are needed/)
  })

  it('says the margin of the reference too where that is the first of the groups', () => {
    const found = lines([...about('R2', 10), ...about('C1', 10.05)])
    expect(linesOf(found, 'equivalence', 0)).toMatchObject([{ a: 'C1', b: 'R2', equivalent: true }])
  })

  it('is that nothing can be said where no group has two blocks that differ', () => {
    const equal = (group: string, strengthMPa: number) => [1, 2].map(() => block({ group, strengthMPa, ageMonths: 0 }))
    const [difference] = linesOf(lines([...equal('C1', 9), ...equal('R2', 10)]), 'against-reference', 0)
    expect(asGoodAnswer(difference!, undefined, name, strength)).toMatch(/^C1 cannot be held against R2: no group/)
  })
})

describe('the answer to what torn wood does to the order', () => {
  const row = (group: string, ...cells: [place: number | null, up: number | null][]) => ({
    group,
    cells: cells.map(([place, up]) => ({ place, up })),
  })
  const answers = (...rows: ReturnType<typeof row>[]) =>
    treatmentAnswers(rows, ['as observed', 'bond failures only'], name)

  it('is that it does nothing to the means, which is no word on how sure they are', () => {
    const [answer, ...more] = answers(row('X', [1, 0], [1, 0]), row('Y', [2, 0], [2, 0]))
    expect(answer).toMatch(/stays the same; how sure that order is, their intervals say/)
    expect(more).toEqual([])
  })

  it('is that the data do not decide where the first place or any other changes, and under which treatment', () => {
    expect(answers(row('X', [1, 0], [2, -1]), row('Y', [2, 0], [1, 1]))).toEqual([
      expect.stringMatching(/first place too \(X and Y\): the data do not decide/),
      'It is another one than as observed under: bond failures only.',
    ])
    expect(answers(row('X', [1, 0], [1, 0]), row('Y', [2, 0], [3, -1]), row('Z', [3, 0], [2, 1]))[0]).toMatch(
      /taken for: the data/,
    )
  })

  it('names a group that has no mean under a treatment, and does not call that another order', () => {
    const found = answers(row('X', [1, 0], [null, null]), row('Y', [2, 0], [1, 0]), row('Z', [3, 0], [2, 0]))
    expect(found[0]).toMatch(/stays the same/)
    expect(found[1]).toBe('X has no mean under: bond failures only.')
  })

  it('is none for one group', () => {
    expect(answers(row('X', [1, 0], [1, 0]))).toEqual(['There are not two groups to put in an order.'])
  })
})

it('lists names as a sentence does', () => {
  expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map((names) => listed(names))).toEqual([
    '',
    'A',
    'A and B',
    'A, B and C',
  ])
  expect(listed(['A, loft', 'B, loft', 'C, bilge'])).toBe('A, loft; B, loft; and C, bilge')
})
