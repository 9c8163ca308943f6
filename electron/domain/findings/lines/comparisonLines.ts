import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { againstReference } from '../compare/againstReference.ts'
import { equivalentPairs } from '../compare/equivalence.ts'
import { type GroupValues, withinGroups, withMoments } from '../compare/groupValues.ts'
import { sharedLetters } from '../compare/letters.ts'
import { kruskalWallisTest, oneWayTest, welchTest } from '../compare/meansTests.ts'
import { type ComparedPair, dunnHolm, gamesHowell, type PairMethod, tukeyKramer } from '../compare/pairs.ts'
import { bartlettTest, brownForsytheTest, leveneTest } from '../compare/spreadTests.ts'
import { rankIntervals } from '../rankIntervals.ts'
import { leastGroupsToShrink, shrunkenMeans } from '../shrunkenMeans.ts'

/** Kinds of lines that compare groups. */
export const comparisonKinds = [
  'means-test',
  'spread-test',
  'pair',
  'against-reference',
  'letters',
  'equivalence',
  'rank',
  'shrunken-mean',
] as const satisfies readonly FindingLine['kind'][]
const spreadKinds = ['spread-test', 'means-test', 'pair', 'letters', 'equivalence', 'rank'] as const

/** So often the blocks of all groups are drawn again for the ranks. */
const draws = 10_000

/**
 * Lines that compare the groups of one age. `wants` says which kinds are asked for, so that nothing is computed in vain.
 * Checked: tests/domain/findings/lines/comparisonLines.spec.ts.
 */
export function* comparisonLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  options: FindingsOptions,
  wants: (kind: FindingLine['kind']) => boolean,
): Generator<FindingLine> {
  const some = groups.filter(({ values }) => values.length > 0)
  if (some.length < 2) {
    const about = comparisonKinds.find(wants) ?? 'means-test'
    yield { kind: 'note', about, code: 'one-group', group: some[0]?.group ?? null, ageMonths }
    return
  }
  yield* spreadNotes(some, ageMonths, wants)
  if (wants('spread-test')) {
    yield { kind: 'spread-test', ageMonths, method: 'brown-forsythe', ...brownForsytheTest(some) }
    yield { kind: 'spread-test', ageMonths, method: 'levene', ...leveneTest(some) }
    yield { kind: 'spread-test', ageMonths, method: 'bartlett', ...bartlettTest(some) }
  }
  if (wants('means-test')) {
    yield { kind: 'means-test', ageMonths, method: 'one-way', ...oneWayTest(some) }
    yield { kind: 'means-test', ageMonths, method: 'welch', ...welchTest(some) }
    yield { kind: 'means-test', ageMonths, method: 'kruskal-wallis', ...kruskalWallisTest(some) }
  }
  if (wants('pair') || wants('letters')) yield* pairLines(some, ageMonths, options)
  if (wants('against-reference')) yield* referenceLines(some, ageMonths, options)
  if (wants('equivalence')) yield* equivalenceLines(some, ageMonths, options)
  if (wants('rank')) yield* rankLines(some, ageMonths, options)
  if (wants('shrunken-mean')) yield* shrunkenLines(some, ageMonths, options.confidence)
}

/** Groups that tests of spread cannot use; said of the first kind of line that is asked for and rests on spreads. */
function* spreadNotes(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  wants: (kind: FindingLine['kind']) => boolean,
): Generator<FindingLine> {
  const about = spreadKinds.find(wants)
  if (about === undefined) return
  for (const { group, values } of groups) {
    const code = values.length === 1 ? 'one-block-left-out' : 'no-spread-no-test'
    if (values.every((value) => value === values[0])) yield { kind: 'note', about, code, group, ageMonths }
  }
}

function* pairLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  options: FindingsOptions,
): Generator<FindingLine> {
  const strongestFirst = withMoments(groups, 1)
    .sort((one, other) => other.mean - one.mean)
    .map(({ group }) => group)
  const compared: [PairMethod, ComparedPair[]][] = [
    ['tukey-kramer', tukeyKramer(groups, options.confidence)],
    ['games-howell', gamesHowell(groups, options.confidence)],
    ['dunn-holm', dunnHolm(groups)],
  ]
  for (const [method, pairs] of compared) {
    for (const pair of pairs) yield { kind: 'pair', ageMonths, method, ...pair }
    const taking = new Set(pairs.flatMap(({ a, b }) => [a, b]))
    const apart = pairs.filter(({ p }) => p !== null && p < 1 - options.confidence)
    const letters = sharedLetters(
      strongestFirst.filter((group) => taking.has(group)),
      apart.map(({ a, b }) => [a, b] as const),
    )
    if (pairs.length > 0) yield { kind: 'letters', ageMonths, method, letters }
  }
}

function* referenceLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  options: FindingsOptions,
): Generator<FindingLine> {
  const { reference, confidence, only } = options
  if (reference === null) {
    if (only?.includes('against-reference'))
      yield { kind: 'note', about: 'against-reference', code: 'no-reference-named', group: null, ageMonths }
    return
  }
  const about = { kind: 'note', about: 'against-reference', group: reference, ageMonths } as const
  if (!groups.some(({ group }) => group === reference)) yield { ...about, code: 'no-reference' }
  for (const found of againstReference(groups, reference, confidence))
    yield { kind: 'against-reference', ageMonths, reference, ...found }
}

function* equivalenceLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  options: FindingsOptions,
): Generator<FindingLine> {
  const { marginPercent, confidence, only, reference } = options
  // The margin is one of the second mean: that of the reference, where one is named
  const ordered = groups.toSorted((one, other) => Number(one.group === reference) - Number(other.group === reference))
  if (marginPercent !== null)
    for (const pair of equivalentPairs(ordered, marginPercent, confidence))
      yield { kind: 'equivalence', ageMonths, ...pair }
  else if (only?.includes('equivalence'))
    yield { kind: 'note', about: 'equivalence', code: 'no-margin', group: null, ageMonths }
}

function* rankLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  options: FindingsOptions,
): Generator<FindingLine> {
  const ranked = groups.filter(({ values }) => values.length > 1)
  const ranks = rankIntervals(
    ranked.map(({ values }) => values),
    { confidence: options.confidence, draws, seed: options.seed },
  )
  for (const [i, { rank, low, high, firstShare }] of ranks.entries())
    yield { kind: 'rank', group: ranked[i]!.group, ageMonths, rank, rankLow: low, rankHigh: high, firstShare }
  for (const { group, values } of groups)
    if (values.length === 1)
      yield { kind: 'rank', group, ageMonths, rank: null, rankLow: null, rankHigh: null, firstShare: null }
}

function* shrunkenLines(
  groups: readonly GroupValues[],
  ageMonths: number | null,
  confidence: number,
): Generator<FindingLine> {
  const moments = withMoments(groups, 1)
  const { df, variance } = withinGroups(moments)
  const possible = moments.length >= leastGroupsToShrink && df > 0 && variance > 0
  const found = possible
    ? shrunkenMeans(
        moments.map(({ mean, n }) => ({ mean, variance: variance / n })),
        confidence,
        df,
      )
    : null
  for (const [i, { group }] of moments.entries()) {
    const shrunken = found?.means[i]
    yield {
      kind: 'shrunken-mean',
      group,
      ageMonths,
      meanMPa: shrunken?.mean ?? null,
      lowMPa: shrunken?.low ?? null,
      highMPa: shrunken?.high ?? null,
      shrinkagePercent: shrunken === undefined ? null : 100 * shrunken.shrinkage,
      betweenSDMPa: found === null ? null : Math.sqrt(found.between),
    }
  }
  if (found === null)
    yield {
      kind: 'note',
      about: 'shrunken-mean',
      code: moments.length < leastGroupsToShrink ? 'few-groups' : 'no-spread',
      group: null,
      ageMonths,
    }
}
