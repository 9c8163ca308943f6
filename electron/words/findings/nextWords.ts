import type { NextAnswer, ShelfSeries, SuspiciousResult, UndecidedGroup } from '#contract/findings/next.ts'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullTitle, seriesWords } from '../programme/pullWords.ts'
import { calendarDayWords } from '../units/calendarDays.ts'
import { countOf } from '../units/counts.ts'
import { percentWords, writeCount, writeSignificant } from '../units/numbers.ts'
import type { Quantities, Quantity } from '../units/quantities.ts'
import { atAge, whenBroken } from './ageingFigureWords.ts'
import { listed } from './answerWords.ts'

type Name = (group: string) => string

const yearOf = (day: string) => day.slice(0, 4)
/** A change a year, two figures. */
export function yearlyWords(percentPerYear: number): string {
  return `${writeSignificant(percentPerYear, 2)} % a year`
}

const what: Record<string, string> = {
  late: 'is late: break its blocks now',
  due: 'is due: break its blocks until the day itself',
  soon: 'comes within a month',
  missed: 'was missed: decide what its blocks are used for',
}

/** Changes a year from the least to the most of them, or the one that they all are. */
function yearlyRange(percents: readonly number[]): string {
  const least = writeSignificant(Math.min(...percents), 2)
  const most = yearlyWords(Math.max(...percents))
  return yearlyWords(Math.min(...percents)) === most ? most : `${least} to ${most}`
}

/** What is to be done of one pull that calls for it. */
export function dueSentence(pull: PullSummary): string {
  const { state, blocks, dueOn } = pull
  return `${pullTitle(pull)} ${what[state] ?? state}; ${countOf(blocks.waiting, 'block')} waiting, its day ${calendarDayWords(dueOn)}.`
}

/** What the pulls left will show of a change a year, over all series; empty where there is no series of a study. */
export function shelfSentences(shelf: readonly ShelfSeries[], changePercentPerYear: number, power: number): string[] {
  const known = shelf.filter(({ cvPercent }) => cvPercent !== null)
  const unknown = shelf.length - known.length
  const change = `a change of ${yearlyWords(changePercentPerYear)}`
  const now = known.filter(({ seen }) => seen?.isDone === true)
  const later = known.filter(({ seen }) => seen !== null && !seen.isDone)
  const never = known.filter(({ seen }) => seen === null)
  const days = later.map(({ seen }) => seen!.day).sort()
  const [first, last] = [days[0], days.at(-1)].map((day) => (day === undefined ? '' : yearOf(day)))
  const ends = never.flatMap(({ sights }) => sights.at(-1)?.changePercentPerYear ?? [])
  const series = (some: readonly unknown[]) => countOf(some.length, 'series', 'series')
  return [
    now.length === 0
      ? ''
      : `The blocks broken so far would show ${change} already, in ${series(now)}: with a chance of ${percentWords(100 * power)} it would have been seen.`,
    later.length === 0
      ? ''
      : `With the pulls left you will see ${change} ${first === last ? `by ${first}` : `between ${first} and ${last}`}, in ${series(later)}, with a chance of ${percentWords(100 * power)}.`,
    never.length === 0
      ? ''
      : ends.length === 0
        ? `With the pulls left ${series(never)} will show no change at all: blocks of two ages are needed.`
        : `With the pulls left ${series(never)} will not show ${change}; at their end they show ${yearlyRange(ends)}.`,
    unknown === 0
      ? ''
      : `Of ${countOf(unknown, 'series', 'series')} the spread is not known: no result and no plan says it.`,
  ].filter((sentence) => sentence !== '')
}

/** Which move of blocks would show the change sooner, or more of it at the end: one sentence for each move that several series share. */
export function moveSentences(shelf: readonly ShelfSeries[], length: Quantity): string[] {
  const moves = shelf.flatMap((one) => (one.move === null ? [] : [{ one, move: one.move }]))
  const alike = Map.groupBy(moves, ({ one: { seen }, move: { fromMonths, toMonths, blocks, seenOn } }) =>
    JSON.stringify([fromMonths, toMonths, blocks, ...[seenOn, seen?.day ?? null].map((day) => day && yearOf(day))]),
  )
  return [...alike.values()].map((some) => {
    const { one, move } = some[0]!
    const whose =
      some.length === 1 ? `of ${seriesWords(one, length)}` : `of each of ${countOf(some.length, 'series', 'series')}`
    const moving = `Moving ${countOf(move.blocks, 'block')} ${whose} from the pull at ${atAge(move.fromMonths)} to the one at ${atAge(move.toMonths)}`
    if (move.seenOn !== null) {
      const otherwise = one.seen === null ? 'instead of never' : `instead of ${yearOf(one.seen.day)}`
      return `${moving} would show it in ${yearOf(move.seenOn)} ${otherwise}.`
    }
    const before = yearlyRange(some.map((each) => each.move.beforePercentPerYear))
    const after = yearlyRange(some.map((each) => each.move.afterPercentPerYear))
    return `${moving} would not show it either, but ${after} at the end instead of ${before}.`
  })
}

/** How many groups are told in sentences; the others stand in the table. */
const mostTold = 5

/** Which groups need more blocks to be told from the reference, and how many. */
export function undecidedSentences(
  undecided: readonly UndecidedGroup[],
  { references, compared, power }: Pick<NextAnswer, 'references' | 'compared' | 'power'>,
  marginPercent: number,
  name: Name,
): string[] {
  if (references.length === 0) return ['No study names a reference: choose one to see which groups need more blocks.']
  const margin = `a difference of ${percentWords(marginPercent)}`
  if (compared === 0) return [`No group was broken beside the reference (${listed(references)}) at one age yet.`]
  if (undecided.length === 0)
    return [`No group lacks blocks to find ${margin} from the reference (${listed(references)}).`]
  const told = undecided.toSorted((one, other) => other.needed - one.needed).slice(0, mostTold)
  const left = undecided.length - told.length
  return [
    ...told.map(({ group, reference, ageMonths, n, referenceN, needed }) => {
      const at = whenBroken(ageMonths)
      return (
        `${name(group)} ${at} is neither told from ${name(reference)} nor shown to be alike: to find ${margin} in ${percentWords(100 * power)} of ` +
        `such studies each needs ${countOf(needed, 'block')}; they have ${writeCount(n)} and ${writeCount(referenceN)}.`
      )
    }),
    ...(left === 0
      ? []
      : [`${countOf(left, 'more group')} ${left === 1 ? 'lacks' : 'lack'} blocks too: see the table.`]),
  ]
}

/** That results of one group are suspicious, and what to do; their names follow. Throws RangeError without a result. */
export function suspiciousSentence(results: readonly SuspiciousResult[], name: Name, strength: Quantity): string {
  const [first] = results
  if (first === undefined) throw new RangeError('suspiciousSentence requires a result')
  const { group, ageMonths, meanMPa } = first
  const lie = results.length === 1 ? '1 result lies' : `${writeCount(results.length)} results lie`
  const them = results.length === 1 ? 'it' : 'them'
  return (
    `${name(group)} ${whenBroken(ageMonths)}: ${lie} far from the others, whose mean with ${them} is ${strength.text(meanMPa)}. ` +
    'Look at curves and faces, and repeat what was spoilt:'
  )
}

export const nothingDueWords = 'No pull is due within a month, and none was missed.'
export const nothingOnShelfWords = 'No study has blocks on the shelf for these.'

/** Results that are suspicious, those of one group and age together. */
export function suspiciousGroups(suspicious: readonly SuspiciousResult[]): SuspiciousResult[][] {
  return [...Map.groupBy(suspicious, ({ group, ageMonths }) => `${ageMonths} ${group}`).values()]
}

/** What the shelf can still show, and which moves of blocks would show more. */
export function onShelfSentences(
  { shelf, power }: Pick<NextAnswer, 'shelf' | 'power'>,
  changePercentPerYear: number,
  length: Quantity,
) {
  return [...shelfSentences(shelf, changePercentPerYear, power), ...moveSentences(shelf, length)]
}

/** The whole answer in sentences, as it is kept. */
export function nextSentences(
  next: NextAnswer,
  { changePercentPerYear, marginPercent }: { changePercentPerYear: number; marginPercent: number },
  name: Name,
  { strength, length }: Pick<Quantities, 'strength' | 'length'>,
): string[] {
  const due = next.due.map(dueSentence)
  const shelves = onShelfSentences(next, changePercentPerYear, length)
  const far = suspiciousGroups(next.suspicious).map(
    (results) => `${suspiciousSentence(results, name, strength)} ${listed(results.map(({ number }) => number))}.`,
  )
  return [
    `As it stood on ${calendarDayWords(next.today)}. The results are watched for changes, plans and shelves are not: ask again before you act.`,
    ...(due.length === 0 ? [nothingDueWords] : due),
    ...far,
    ...(shelves.length === 0 ? [nothingOnShelfWords] : shelves),
    ...undecidedSentences(next.undecided, next, marginPercent, name),
  ]
}

/** Where the spread of a series comes from. */
export const spreadFromWords: Record<NonNullable<ShelfSeries['cvFrom']>, string> = {
  series: 'its own results',
  results: 'all results',
  plan: 'the plan',
}
