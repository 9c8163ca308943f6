import { describe, expect, it } from 'vitest'
import { type AgeingAnswer, ageingQuestion } from '#contract/findings/ageing.ts'
import type { FindingOf } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { type AgeingPart, ageingUnits } from '#domain/findings/ageing/ageingParts.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import {
  belowSentence,
  boardsSentence,
  chance,
  chanceWords,
  changesAnswer,
  fewAgesSentence,
  modelName,
  modelsSentence,
  retentionWords,
  togetherSentences,
} from '#words/findings/ageingWords.ts'
import { linesOf } from '#words/findings/answerWords.ts'
import { block } from '../../domain/findings/knownStudies.ts'

const name = (group: string) => group
const spread = [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5]
/** Six blocks at each age; the mean changes by so much a year. */
const series = (group: string, perYear: number, months = [0, 6, 12, 24], size = 1) =>
  months.flatMap((ageMonths, age) =>
    spread.map((step, i) =>
      block({
        ...{ group, ageMonths, board: `plank ${(i + age) % 3}` },
        strengthMPa: 10 + (perYear * ageMonths) / 12 + size * step,
      }),
    ),
  )
type Blocks = ReturnType<typeof series>
const lines = (blocks: Blocks) => [...findingLines(blocks, findingsOptions.parse({}))]
const answer = (blocks: Blocks, given = {}, endMonths = 120): AgeingAnswer => {
  const parts: AgeingPart[] = ageingUnits(blocks, ageingQuestion.parse(given), () => endMonths).flatMap((unit) => [
    ...unit.lines(),
  ])
  return {
    series: parts.flatMap((part) => (part.of === 'series' ? [{ ...part.found, upcomingMonths: [] }] : [])),
    together: parts.find((part) => part.of === 'together')?.found ?? null,
    boards: parts.flatMap((part) => (part.of === 'boards' ? [part.found] : [])),
    computed: 0,
  }
}
const changes = (...some: Blocks[]) => changesAnswer(linesOf(lines(some.flat()), 'retention'), name)

describe('the answer to what changed in all series', () => {
  it('counts falls and rises, and turns with the data', () => {
    const told = changes(series('falls', -2), series('rises', 2), series('stays', 0))
    expect(told[0]).toBe('Of 3 series by their last ages, 1 fell, 1 rose and 1 shows no change that can be told.')
    expect(told).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^falls fell/),
        expect.stringMatching(/^rises rose/),
        'No change can be told of stays.',
      ]),
    )
    const opposite = changes(series('falls', 2), series('rises', -2), series('stays', 0))
    expect(opposite).toEqual(
      expect.arrayContaining([expect.stringMatching(/^falls rose/), expect.stringMatching(/^rises fell/)]),
    )
  })

  it('says how many would be named though none changed, where any is', () => {
    expect(changes(series('a', -2), series('b', 0)).at(-1)).toMatch(/about 0\.10 would be named all the same/)
    expect(changes(series('a', 0), series('b', 0)).join(' ')).not.toMatch(/all the same/)
  })

  it('is one sentence for one series, and none without a second age', () => {
    expect(changes(series('a', -2))).toEqual([expect.stringMatching(/^a fell/)])
    expect(changes(series('a', -2, [0]))).toEqual([])
  })

  it('says that a share is unbounded where the first strength is too uncertain', () => {
    const wild = [0.1, 9, 0.2].map((strengthMPa) => block({ group: 'a', ageMonths: 0, strengthMPa }))
    const [told] = changes([...wild, ...series('a', 0, [24])])
    expect(told).toMatch(/unbounded/)
    const [line] = linesOf(lines([...wild, ...series('a', 0, [24])]), 'retention')
    expect(retentionWords(line!)).toMatch(/\(unbounded\)$/)
  })
})

it('writes a share with its interval as a cell has it', () => {
  const line: FindingOf<'retention'> = {
    ...{ kind: 'retention', group: 'a', ageMonths: 12, referenceAgeMonths: 0 },
    ...{ ratio: 0.812, low: 0.74, high: 0.9, bounded: true },
  }
  expect(retentionWords(line)).toBe('81 % (74 % to 90 %)')
  expect(retentionWords({ ...line, low: null, high: null, bounded: null })).toBe('81 %')
  expect(retentionWords({ ...line, ratio: null, low: null, high: null, bounded: null })).toBe('–')
})

describe('the sentence on lines', () => {
  it('says that two or three ages get none, and is silent on four', () => {
    const few = (months: number[]) => fewAgesSentence(answer(series('a', -1, months)).series, name)
    expect(few([0, 6])).toMatch(/^a was broken at 2 ages \(0 months and 6 months\): too few for a line/)
    expect(few([0, 6, 12])).toMatch(/3 ages/)
    expect(few([0, 6, 12, 24])).toBeNull()
    const two = answer([...series('a', -1, [0, 6]), ...series('b', -1, [0, 6])])
    expect(fewAgesSentence(two.series, name)).toMatch(/^2 series have fewer than four ages/)
  })

  it('on the chance of a fall is sure only where the chance is, and turns with the data', () => {
    const told = (perYear: number, size = 1) =>
      belowSentence(answer(series('a', perYear, [0, 6, 12, 24], size), { atMonths: 24 }).series[0]!, name)
    expect(told(-2)).toMatch(/^In all likelihood the mean of a at 2 years lies below 80 % of its first one/)
    expect(told(2)).toMatch(/^It is unlikely/)
    expect(told(-1)).toMatch(/^The data leave open/)
    expect(belowSentence(answer(series('a', -2, [0, 6])).series[0]!, name)).toBeNull()
  })

  it('on the chance of a fall is not sure where one kind of line that is left would have it otherwise', () => {
    const sure = answer(series('a', -2, [0, 6, 12, 24]), { atMonths: 24 }).series[0]!
    const apart = (least: number, most: number) =>
      belowSentence({ ...sure, below: { ageMonths: 240, sharePercent: 80, probability: 0.99, least, most } }, name)
    expect(apart(0.6, 1)).toBe(
      'The data leave open whether the mean of a at 20 years lies below 80 % of its first one: the chance is 99 %, by kind of line from 60 % to above 99 %.',
    )
    expect(apart(0.96, 1)).toMatch(/^In all likelihood/)
    expect(apart(0, 0.04)).toMatch(/^It is unlikely/)
    expect(apart(0, 0.5)).toMatch(/^The data leave open/)
  })

  it('on the models names one only where it carries the weight', () => {
    const model = (one: FindingOf<'ageing-model'>['model'], weight: number | null): FindingOf<'ageing-model'> => ({
      ...{ kind: 'ageing-model', group: 'a', ageMonths: null, model: one, parameters: {}, standardErrors: {} },
      ...{ sigmaMPa: 1, aicc: 1, weight, failed: weight === null ? 'no-curvature' : null },
    })
    expect(modelsSentence([model('linear', 0.95), model('constant', 0.05)], name)).toMatch(
      /"straight line" carries 95 % of the weight for a/,
    )
    expect(modelsSentence([model('constant', 0.95), model('linear', 0.05)], name)).toMatch(/"no change" carries/)
    expect(modelsSentence([model('linear', 0.5), model('constant', 0.4), model('log-time', 0.1)], name)).toMatch(
      /do not decide between "straight line" and "no change"/,
    )
    expect(modelsSentence([model('linear', 0.7), model('constant', 0.2)], name)).toMatch(/others are not ruled out/)
    expect(modelsSentence([model('linear', null)], name)).toBeNull()
    expect(modelName('exponential-approach')).toBe('approach to an end')
  })

  it('on all series together tells a change only where the interval holds none', () => {
    const together = (...perYear: number[]) =>
      togetherSentences(answer(perYear.flatMap((one, i) => series(`${i}`, one))))
    expect(together(-1, -1.1, -0.9)[0]).toMatch(/^The 3 series together lose strength: −/)
    expect(together(1, 1.1, 0.9)[0]).toMatch(/^The 3 series together gain strength: \+/)
    expect(together(-0.1, 0.1, 0)[0]).toMatch(/show no common change that can be told/)
    expect(together(-1, -1, -1)[1]).toMatch(/no more than their blocks/)
    expect(together(-3, 0, 3)[1]).toMatch(/spread by/)
    expect(together(-1, -1)).toEqual([])
  })
})

it('tells boards apart only where they are', () => {
  const boards = (above: number) => {
    const blocks = series('a', 0, [0]).concat(series('b', 0, [0]))
    const moved = blocks.map((one) => ({
      ...one,
      strengthMPa: one.strengthMPa + (one.board === 'plank 1' ? above : 0),
    }))
    return boardsSentence(answer(moved).boards[0]!)
  }
  expect(boards(4)).toMatch(/^At 0 months the 3 boards differ/)
  expect(boards(0)).toMatch(/^At 0 months the 3 boards cannot be told apart/)
})

it('never writes a chance as sure, nor a p as nothing', () => {
  expect([0, 0.004, 0.2, 0.996, 1].map(chanceWords)).toEqual([
    'below 1 %',
    'below 1 %',
    '20 %',
    'above 99 %',
    'above 99 %',
  ])
  expect([null, 0, 0.04].map(chance)).toEqual(['–', 'below 0.001', '0.040'])
})
