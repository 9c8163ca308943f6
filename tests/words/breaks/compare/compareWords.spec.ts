import { describe, expect, it } from 'vitest'
import type { ComparedCurve, Comparison } from '#contract/breaks/comparison.ts'
import {
  curveName,
  differenceWords,
  hintWords,
  leftOutName,
  medianWords,
  outlyingWords,
  placeWords,
  severalGroupsWords,
  standingWords,
} from '#words/breaks/compare/compareWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const curve = (change: Partial<ComparedCurve> = {}): ComparedCurve => ({
  breakId: 7,
  number: 'C1-LL-07',
  outcome: 'break',
  setAside: false,
  peakN: 4000,
  originS: 2,
  timeUnit: 1,
  forceUnit: 1,
  samples: 800,
  distance: 300,
  zScore: 4.1,
  outlying: { at: 4.2, difference: -540 },
  ...change,
})
const comparison = (change: Partial<Comparison> = {}): Comparison => ({
  curves: [curve()],
  leftOut: [],
  notJudged: null,
  alignAt: 'onset',
  unit: 'N',
  timeUnit: 's',
  grid: Float64Array.of(0, 4, 5, 6),
  median: Float64Array.of(0, 2960, 3160, 4000),
  lower: new Float64Array(4),
  upper: new Float64Array(4),
  curvesAt: new Float64Array(4),
  ...change,
})
const si = quantitiesIn('SI')

describe('what is said of an outlying curve', () => {
  const words = (outlying: ComparedCurve['outlying'], change: Partial<Comparison> = {}, quantities = si) =>
    outlyingWords(curve({ outlying }), comparison(change), quantities).replaceAll('\u00a0', ' ')
  it('names the amount, the median there, the side, the place, and what the percentage is of', () =>
    // The median at 4.2 s is 2960 + 0.2 x 200 = 3000 N; 540 N of it are 18 %.
    expect(words({ at: 4.2, difference: -540 })).toBe(
      'lies 540.0 N below the median of 3000 N (18 % of it), 4.20 s after the start of loading',
    ))
  it('says above of one that lies above, with a decimal where it is close, in the units shown', () => {
    expect(words({ at: 4, difference: 148 })).toBe(
      'lies 148.0 N above the median of 2960 N (5.0 % of it), 4.00 s after the start of loading',
    )
    // 148 / 4.4482216 = 33.27 lbf, 2960 / 4.4482216 = 665.4 lbf
    expect(words({ at: 4, difference: 148 }, {}, quantitiesIn('US'))).toBe(
      'lies 33.3 lbf above the median of 665.4 lbf (5.0 % of it), 4.00 s after the start of loading',
    )
  })
  it('takes no percentage of a median near zero', () => {
    // At 0.4 s it is 296 N, less than a tenth of 4000 N.
    expect(words({ at: 0.4, difference: 888 })).toBe(
      'lies 888.0 N above the median of 296.0 N, 0.400 s after the start of loading',
    )
    expect(words({ at: 0, difference: -90 }, { unit: 'counts' })).toBe(
      'lies 90 counts below the median of 0 counts, at the start of loading',
    )
  })
  it('names the moment from where the curves are aligned', () => {
    const grid = Float64Array.of(-6, -4, -2, 0)
    const moment = (alignAt: 'peak' | 'break', timeUnit: 's' | '%') =>
      words({ at: -2, difference: -790 }, { grid, alignAt, timeUnit }).replace(/^.*, /, '')
    expect(moment('peak', 's')).toBe('2.00 s before the peak')
    expect(moment('break', 's')).toBe('2.00 s before the break')
    expect(moment('peak', '%')).toBe('at 98 % of the time to peak')
    expect(moment('break', '%')).toBe('2 % of the time to peak before the break')
    expect(words({ at: 0, difference: -400 }, { grid, alignAt: 'peak' })).toBe(
      'lies 400.0 N below the median of 4000 N (10 % of it), at the peak',
    )
  })
  it('takes no percentage of a percentage', () => {
    const median = Float64Array.of(0, 61, 70, 100)
    expect(words({ at: 4, difference: -26.4 }, { unit: '%', timeUnit: '%', median })).toBe(
      'stands at 35 % of its own peak, 26 points below the median, at 4 % of the time to peak',
    )
  })
  it('is short in the plot', () => {
    const short = (difference: number, unit: Comparison['unit'], quantities = si) =>
      differenceWords({ difference }, unit, quantities).replace('\u00a0', ' ')
    expect(short(-540, 'N')).toBe('540.0 N below the median')
    expect(short(444.82216152605, 'N', quantitiesIn('US'))).toBe('100.0 lbf above the median')
    expect(short(-90.4, 'counts')).toBe('90 counts below the median')
    expect(short(7.26, '%')).toBe('7.3 points above the median')
  })
  it('is nothing for any other curve', () =>
    expect(outlyingWords(curve({ outlying: null }), comparison(), si)).toBe(''))
})

describe('placeWords', () => {
  it.each([
    [0.0123, 's', '0.012 s'],
    [-4.256, 's', '−4.26 s'],
    [17.33, 's', '17.3 s'],
    [62.4, '%', '62 % of the time to peak'],
  ] as const)('writes %d %s as %s', (at, unit, words) => expect(placeWords(at, unit)).toBe(words))
})

describe('curveName', () => {
  it('names the specimen, and the break where a specimen has several', () => {
    expect(curveName(curve(), [curve()])).toBe('C1-LL-07')
    expect(curveName(curve(), [curve(), curve({ breakId: 9 })])).toBe('C1-LL-07 (break 7)')
    expect(curveName(curve({ number: null }), [])).toBe('break 7')
  })
})

describe('the hint below the table', () => {
  const among = (count: number) =>
    comparison({
      curves: [...Array(9)].map((_, i) => curve({ outlying: i < count ? { at: 1, difference: 1 } : null })),
    })
  it('calls outlying curves a hint and no verdict', () => {
    expect(hintWords(among(1))).toMatch(/^One curve stands out .* look at it, not a verdict\./)
    expect(hintWords(among(2))).toMatch(/^2 curves stand out .* look at them, not a verdict\./)
  })
  it('does not call curves sound because none stands out', () => expect(hintWords(among(0))).toMatch(/no proof/))
  it('says why none was judged', () => {
    expect(hintWords(comparison({ notJudged: 'too-few' }))).toContain('fewer than five')
    expect(hintWords(comparison({ notJudged: 'all-alike' }))).toContain('equally far')
  })
})

it.each([
  [1, /^One curve has no median/],
  [2, /^Two curves have no useful median/],
  [3, /^$/],
])('says of %i curves whether they have a median', (curves, words) => expect(medianWords(curves)).toMatch(words))

describe('standingWords', () => {
  const plain: Parameters<typeof standingWords>[0] = {
    ...{ outcome: 'break', ending: 'complete', setAside: null },
    ...{ flags: [], overruled: null, peakN: 900, resultsOfSpecimen: 1, demo: false, simulated: false },
  }

  it('says nothing of a plain break', () => expect(standingWords({ ...plain, flags: ['glitch'] }, 1000)).toBe(''))
  it('tells curves that are no strength, and those that count for nothing', () => {
    expect(standingWords({ ...plain, outcome: 'unloading' }, null)).toBe('unloaded, no break')
    expect(standingWords({ ...plain, outcome: 'unloading', ending: 'interrupted' }, null)).toBe('cut short, no break')
    expect(standingWords({ ...plain, setAside: 'it slipped' }, null)).toBe('set aside, dashed')
  })
  it('tells a curve that nobody measured', () => {
    expect(standingWords({ ...plain, simulated: true }, null)).toBe('simulated')
    expect(standingWords({ ...plain, demo: true, outcome: 'unloading' }, null)).toBe('unloaded, no break; simulated')
  })
  it('tells a peak that is a lower limit', () => {
    expect(standingWords({ ...plain, flags: ['clipped'] }, null)).toBe('peak at least')
    expect(standingWords({ ...plain, setAside: 'it slipped', flags: ['clipped'] }, null)).toBe(
      'set aside, dashed; peak at least',
    )
  })
})

it('says of curves of several groups that their median mixes them, where there is one', () => {
  expect(severalGroupsWords(3)).toMatch(/^of more than one group: median and quartiles are of all/)
  expect(severalGroupsWords(2)).toBe('of more than one group')
})

it('names what is left out as the other places do', () => {
  expect(leftOutName(7, 'C1-LL-07')).toBe('C1-LL-07, break 7')
  expect(leftOutName(7, null)).toBe('break 7')
})
