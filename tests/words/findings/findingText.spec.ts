import { describe, expect, it } from 'vitest'
import { type FindingLine, findingKind } from '#contract/findings/lines.ts'
import { findingsOptions } from '#contract/findings/options.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import { basisText, findingText } from '#words/findings/findingText.ts'
import { agedMonths, agedStrengths } from '../../domain/findings/ageing/agedBlocks.ts'
import { block, handbookGroups } from '../../domain/findings/knownStudies.ts'

const pair = {
  kind: 'pair',
  ageMonths: null,
  method: 'tukey-kramer',
  a: 'Hide',
  b: 'Bone',
  statistic: 1,
  df: 9,
  p: 0.3,
} as const

it('calls a test by the name that textbooks give it', () => {
  const test = { ageMonths: 6, statistic: 5.5, df1: 3, df2: 28, p: 0.0012 } as const
  expect(findingText({ ...test, kind: 'means-test', method: 'kruskal-wallis' })).toMatch(
    /^equal means.*Kruskal-Wallis:/,
  )
  expect(findingText({ ...test, kind: 'spread-test', method: 'brown-forsythe' })).toMatch(
    /^equal spread.*Brown-Forsythe:/,
  )
})

describe('a difference', () => {
  it('is called one only where its interval does not hold 0', () => {
    expect(findingText({ ...pair, differenceMPa: 2, lowMPa: 0.5, highMPa: 3.5 })).toMatch(
      /Hide is stronger than Bone by 2\.000 MPa/,
    )
    expect(findingText({ ...pair, differenceMPa: -2, lowMPa: -3.5, highMPa: -0.5 })).toMatch(
      /Hide is weaker than Bone by 2\.000 MPa \(0\.5000 to 3\.500\)/,
    )
    for (const [lowMPa, highMPa] of [
      [-0.1, 4.1],
      [0, 4],
      [null, null],
    ] as const)
      expect(findingText({ ...pair, differenceMPa: 2, lowMPa, highMPa })).not.toMatch(/stronger|weaker/)
  })

  it('of ranks has no size', () => {
    expect(
      findingText({ ...pair, method: 'dunn-holm', differenceMPa: null, lowMPa: null, highMPa: null, df: null }),
    ).toMatch(/Hide and Bone, p 0\.3000/)
  })
})

it('says of a rank between which places it lies', () => {
  const rank = {
    kind: 'rank',
    group: 'Hide',
    ageMonths: null,
    rank: 2,
    rankLow: 1,
    rankHigh: 4,
    firstShare: 0.25,
  } as const
  expect(findingText(rank)).toMatch(/rank 2, between 1 and 4, first in 25 %/)
})

it('does not say that groups are equivalent where that is not shown', () => {
  const line = {
    kind: 'equivalence',
    ageMonths: null,
    a: 'A',
    b: 'B',
    marginPercent: 10,
    pLower: 0.01,
    pUpper: 0.2,
    p: 0.2,
  } as const
  expect(findingText({ ...line, equivalent: false })).toMatch(/not shown to be within/)
  expect(findingText({ ...line, equivalent: true })).toMatch(/A and B are within 10/)
})

it('has words for every kind of line, without a null or a number that is none', () => {
  const study = handbookGroups.flatMap(({ group, values }) =>
    [...values].map((strengthMPa) => block({ group, strengthMPa })),
  )
  const series = agedStrengths.map((strengthMPa, i) => block({ group: 'S', strengthMPa, ageMonths: agedMonths[i]! }))
  const far = block({ group: '1', strengthMPa: 90, specimen: 'C7', excludedBecause: null })
  const options = findingsOptions.parse({ reference: '1', marginPercent: 10 })
  const lines: FindingLine[] = [...findingLines([...study, far], options), ...findingLines(series, options)]
  expect(new Set(lines.map(({ kind }) => kind))).toEqual(new Set(findingKind.options))
  for (const line of lines) expect(findingText(line)).not.toMatch(/null|NaN|undefined|\[object/)
})

it('says before all lines how sure the intervals are and what torn wood is taken for', () => {
  expect(basisText(findingsOptions.parse({ confidence: 0.9, woodFailure: 'bond-only', seed: 7 }))).toBe(
    'Intervals hold with 90 % confidence. Torn wood: bond failures only (below 75 % torn wood). Lower tolerance limit: 95 % of ' +
      'blocks are stronger, with 75 % confidence. Resamplings from seed 7.',
  )
})

it('leads no strength below nothing, and gives shares no more than two figures', () => {
  const forecast = { kind: 'forecast', group: 'S', ageMonths: 240, belowShareProbability: 1 } as const
  expect(findingText({ ...forecast, meanMPa: -32.98, lowMPa: -457.7, highMPa: 70.16, retentionPercent: -37.74 })).toBe(
    'S, 240 months: forecast 0 MPa (0 to 70.16), 0 % of the start',
  )
})

it('gives a test with its degrees of freedom', () => {
  const test = { kind: 'means-test', ageMonths: 0, statistic: 9.72384, p: 0.000684 } as const
  expect(findingText({ ...test, method: 'one-way', df1: 3, df2: 16 })).toMatch(
    /9\.724 on 3 and 16 degrees of freedom, p 0\.0007$/,
  )
  expect(findingText({ ...test, method: 'kruskal-wallis', df1: 3, df2: null })).toMatch(/ on 3 degrees of freedom, p/)
  expect(findingText({ ...test, method: 'kruskal-wallis', df1: 1, df2: null })).toMatch(/ on 1 degree of freedom, p/)
})

it('gives a weight that nothing hangs on no figures', () => {
  const model = {
    ...({ kind: 'ageing-model', group: 'S', ageMonths: null, model: 'constant', failed: null, aicc: 9 } as const),
    ...{ parameters: { startMPa: 4.4 }, standardErrors: { startMPa: 0.1 }, sigmaMPa: 1 },
  }
  expect(findingText({ ...model, weight: 1.288e-33 })).toMatch(/, weight below 0\.001$/)
  expect(findingText({ ...model, weight: 0.25 })).toMatch(/, weight 0\.2500$/)
})
