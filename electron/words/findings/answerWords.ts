import type { FindingLine, FindingOf } from '#contract/findings/lines.ts'
import { countOf } from '../units/counts.ts'
import { percentWords, writeCount, writeSignificant } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

type Name = (group: string) => string

const share = (part: number) => `${writeSignificant(100 * part, 2)} %`

/** Names one after the other: "A, B and C"; names that hold commas themselves: "A, loft; B, loft; and C, bilge". */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? ''
  const parted = names.some((name) => name.includes(', '))
  return `${names.slice(0, -1).join(parted ? '; ' : ', ')}${parted ? ';' : ''} and ${names.at(-1)}`
}

/** Which group is strongest at one age, and whether the data say so: from the lines "rank" of that age. */
export function strongestAnswer(ranks: readonly FindingOf<'rank'>[], name: Name): string {
  const told = ranks.filter(({ rank }) => rank !== null).sort((one, other) => one.rank! - other.rank!)
  const [first] = told
  if (first === undefined) return 'No group has two blocks or more at this age, so that nothing can be ranked.'
  const without = placelessSentence(ranks.filter(({ rank }) => rank === null).map(({ group }) => name(group)))
  if (told.length === 1)
    return `Only ${name(first.group)} has two blocks or more at this age: there is nothing to rank it with.${without}`
  const often = `came first in ${oftenWords(first.firstShare!)} of the resamplings`
  if (first.rankHigh === 1)
    return `${name(first.group)} is the strongest of ${writeCount(told.length)} groups: it ${often}.${without}`
  // Of many groups each may come first too seldom to be named, and all of them often enough together.
  const perhaps = told.filter(({ rankLow }) => rankLow === 1)
  const among =
    perhaps.length > 1 ? listed(perhaps.map(({ group }) => name(group))) : `the ${writeCount(told.length)} groups`
  const highest = told.filter(({ rank }) => rank === 1).map(({ group }) => name(group))
  const lead =
    highest.length > 1 ? `${listed(highest)} have the same mean` : `${highest[0]} has the highest mean and ${often}`
  return `The data do not decide which of ${among} is the strongest: ${lead}.${without}`
}

/** A share of the resamplings: all of them only where it was so. */
function oftenWords(part: number): string {
  return part < 1 && part > 0.995 ? 'more than 99 %' : share(part)
}

function placelessSentence(names: readonly string[]): string {
  if (names.length === 0) return ''
  return names.length === 1
    ? ` ${names[0]} has one block alone and no place.`
    : ` ${listed(names)} have one block each and no place.`
}

/** What became of one group by its last age: from its lines "retention"; null where it has one age alone. */
export function changedAnswer(retentions: readonly FindingOf<'retention'>[], name: Name): string | null {
  const last = retentions.toSorted((one, other) => one.ageMonths! - other.ageMonths!).at(-1)
  if (last === undefined) return null
  const { group, ageMonths, referenceAgeMonths, ratio, low, high, bounded } = last
  const when = `at ${countOf(ageMonths!, 'month')}`
  const of = `of its strength at ${countOf(referenceAgeMonths, 'month')}`
  if (ratio === null || bounded === null)
    return `${name(group)}: ${when} there are too few blocks to compare with the first age.`
  if (!bounded || low === null || high === null)
    return `${name(group)}: ${when} nothing can be said, for its first strength is so uncertain that the share is unbounded.`
  const interval = `${share(low)} to ${share(high)}`
  if (high < 1) return `${name(group)} fell: ${when} it held ${share(ratio)} ${of} (${interval}).`
  if (low > 1) return `${name(group)} rose: ${when} it held ${share(ratio)} ${of} (${interval}).`
  return `${name(group)}: no change can be told ${when}, it held ${share(ratio)} ${of} (${interval}).`
}

/** That one group is stronger or weaker than another, by a size in words. */
export function toldApart(one: string, other: string, difference: number, size: string): string {
  return `${one} is ${difference > 0 ? 'stronger' : 'weaker'} than ${other} by ${size}`
}

/** Whether a group is as good as the reference: from the comparison with it and the test of equivalence, at one age. */
export function asGoodAnswer(
  difference: FindingOf<'against-reference'>,
  equivalence: FindingOf<'equivalence'> | undefined,
  name: Name,
  strength: Quantity,
): string {
  const { group, reference, differenceMPa, lowMPa, highMPa } = difference
  const [one, other] = [name(group), name(reference)]
  if (differenceMPa === null || lowMPa === null || highMPa === null)
    return `${one} cannot be held against ${other}: no group has blocks that differ, so that there is no interval.`
  const margin = equivalence === undefined ? '' : `${percentWords(equivalence.marginPercent)} of the mean of ${other}`
  const alike = equivalence?.equivalent === true
  if (lowMPa > 0 || highMPa < 0) {
    const [least, most] = [Math.abs(lowMPa), Math.abs(highMPa)].sort((a, b) => a - b)
    const size = `${strength.text(Math.abs(differenceMPa))} (${strength.number(least!)} to ${strength.text(most!)})`
    return `${toldApart(one, other, differenceMPa, size)}${alike ? `, yet by less than ${margin}` : ''}.`
  }
  const less = strength.text(-lowMPa)
  const more = strength.text(highMPa)
  const within = alike
    ? `; within ${margin} they are alike`
    : equivalence === undefined || equivalence.equivalent === null
      ? ''
      : `, and not shown to lie within ${margin} either: more blocks are needed`
  return `${one} is not to be told from ${other}: its mean may lie from ${less} below to ${more} above${within}.`
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
