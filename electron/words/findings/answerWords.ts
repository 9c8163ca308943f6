import type { FindingLine, FindingOf } from '#contract/findings/lines.ts'
import { percentWords, writeCount, writeSignificant } from '../units/numbers.ts'

type Name = (group: string) => string

const share = (part: number) => `${writeSignificant(100 * part, 2)} %`

/** Names one after the other: "A, B and C". */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

/** Which group is strongest at one age, and whether the data say so: from the lines "rank" of that age. */
export function strongestAnswer(ranks: readonly FindingOf<'rank'>[], name: Name): string {
  const told = ranks.filter(({ rank }) => rank !== null).sort((one, other) => one.rank! - other.rank!)
  const [first] = told
  if (first === undefined) return 'No group has two blocks or more at this age, so that nothing can be ranked.'
  if (told.length === 1)
    return `Only ${name(first.group)} has two blocks or more at this age: there is nothing to rank it with.`
  const often = `came first in ${share(first.firstShare!)} of the resamplings`
  if (first.rankHigh === 1)
    return `${name(first.group)} is the strongest of ${writeCount(told.length)} groups: it ${often}.`
  // Of many groups each may come first too seldom to be named, and all of them often enough together.
  const perhaps = told.filter(({ rankLow }) => rankLow === 1)
  const among =
    perhaps.length > 1 ? listed(perhaps.map(({ group }) => name(group))) : `the ${writeCount(told.length)} groups`
  return `The data do not decide which of ${among} is the strongest: ${name(first.group)} has the highest mean and ${often}.`
}

/** What became of one group by its last age: from its lines "retention"; null where it has one age alone. */
export function changedAnswer(retentions: readonly FindingOf<'retention'>[], name: Name): string | null {
  const last = retentions.toSorted((one, other) => one.ageMonths! - other.ageMonths!).at(-1)
  if (last === undefined) return null
  const { group, ageMonths, referenceAgeMonths, ratio, low, high, bounded } = last
  const when = `at ${writeCount(ageMonths!)} months`
  const of = `of its strength at ${writeCount(referenceAgeMonths)} months`
  if (ratio === null || bounded === null)
    return `${name(group)}: ${when} there are too few blocks to compare with the first age.`
  if (!bounded || low === null || high === null)
    return `${name(group)}: ${when} nothing can be said, for its first strength is so uncertain that the share is unbounded.`
  const interval = `${share(low)} to ${share(high)}`
  if (high < 1) return `${name(group)} fell: ${when} it held ${share(ratio)} ${of} (${interval}).`
  if (low > 1) return `${name(group)} rose: ${when} it held ${share(ratio)} ${of} (${interval}).`
  return `${name(group)}: no change can be told ${when}, it held ${share(ratio)} ${of} (${interval}).`
}

/** Whether a group is as good as the reference: from the comparison with it and the test of equivalence, at one age. */
export function asGoodAnswer(
  difference: FindingOf<'against-reference'>,
  equivalence: FindingOf<'equivalence'> | undefined,
  name: Name,
): string {
  const { group, reference, lowMPa, highMPa } = difference
  const told = lowMPa !== null && highMPa !== null && (lowMPa > 0 || highMPa < 0)
  const side = told ? (lowMPa > 0 ? 'stronger than' : 'weaker than') : 'not to be told from'
  const margin = equivalence === undefined ? null : percentWords(equivalence.marginPercent)
  const within =
    equivalence === undefined
      ? ''
      : equivalence.equivalent === true
        ? `; within ${margin} of it they are alike`
        : told
          ? ''
          : `, and not shown to lie within ${margin} of it either: more blocks are needed`
  return `${name(group)} is ${side} ${name(reference)}${within}.`
}

type TreatedRow = { group: string; cells: readonly { place: number | null; up: number | null }[] }

/**
 * Whether the order of the groups hangs on what torn wood is taken for: rows in the order of the first treatment, with the place of
 * each group under all of them.
 */
export function treatmentAnswers(rows: readonly TreatedRow[], treatments: readonly string[], name: Name): string[] {
  const ranked = rows.filter(({ cells }) => cells[0]?.place !== null)
  if (ranked.length < 2) return ['There are not two groups to put in an order.']
  const without = treatments.flatMap((treatment, at) => {
    const groups = rows.filter(({ cells }) => cells[at]?.place === null).map(({ group }) => name(group))
    return groups.length === 0
      ? []
      : [`${listed(groups)} ${groups.length === 1 ? 'has' : 'have'} no mean under: ${treatment}.`]
  })
  const moving = treatments.filter((_, at) => ranked.some(({ cells }) => (cells[at]?.up ?? 0) !== 0))
  if (moving.length === 0)
    return [
      'Whatever torn wood is taken for, the order of the groups by their means stays the same; how sure that order is, their intervals say.',
      ...without,
    ]
  const [first] = ranked
  const firsts = rows
    .filter(({ group, cells }) => group === first!.group || cells.some(({ place, up }) => place === 1 && (up ?? 0) > 0))
    .map(({ group }) => name(group))
  const about = firsts.length > 1 ? `, first place too (${listed(firsts)})` : ''
  return [
    `The order of the groups hangs on what torn wood is taken for${about}: the data do not decide.`,
    `It is another one than as observed under: ${moving.join('; ')}.`,
    ...without,
  ]
}

/** Lines of a kind, at an age where one is given. */
export function linesOf<Kind extends FindingLine['kind']>(
  lines: readonly FindingLine[],
  kind: Kind,
  ageMonths?: number | null,
): FindingOf<Kind>[] {
  return lines.filter(
    (line): line is FindingOf<Kind> =>
      line.kind === kind && (ageMonths === undefined || ('ageMonths' in line && line.ageMonths === ageMonths)),
  )
}
