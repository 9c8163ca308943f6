import type { BreakSummary } from '#contract/breaks/break.ts'
import type { ComparedCurve, Comparison } from '#contract/breaks/comparison.ts'
import { between } from '#domain/numbers/between.ts'
import { isLowerLimit } from '#domain/strength/lowerLimit.ts'
import { isSimulated, simulatedMark } from '../../keeping/demoWords.ts'
import { resultsWords } from '../../specimens/resultsWords.ts'
import { writeFixed } from '../../units/numbers.ts'
import type { Quantities } from '../../units/quantities.ts'
import { outcomeWord } from '../outcomeWords.ts'

/** Below this share of the highest median a percentage of it says nothing: the load is near zero there. */
const leastShareForPercent = 0.1

/** What a curve is called where it is pointed out. */
export function curveName(
  { number, breakId }: Pick<ComparedCurve, 'number' | 'breakId'>,
  among: readonly ComparedCurve[],
) {
  if (number === null) return `break ${breakId}`
  const same = among.filter((other) => other.number === number).length
  return same > 1 ? `${number} (break ${breakId})` : number
}

/**
 * "lies 540 N below the median of 3000 N (18 % of it), 4.2 s after the start of loading", or "stands at 35 % of its own peak, 26 points below the
 * median, 4.2 s after the start of loading"; empty for a curve that is none of the outlying.
 */
export function outlyingWords(
  { outlying }: Pick<ComparedCurve, 'outlying'>,
  comparison: Pick<Comparison, 'grid' | 'median' | 'unit' | 'timeUnit' | 'alignAt'>,
  quantities: Quantities,
): string {
  if (outlying === null) return ''
  const { grid, median, unit } = comparison
  const { at, difference } = outlying
  // Where it lies farthest off there is a median.
  const there = between(grid, median, at) ?? 0
  const size = amountWords(difference, unit, quantities)
  const side = difference < 0 ? 'below' : 'above'
  const moment = momentWords(at, comparison)
  if (unit === '%')
    return `stands at ${writeFixed(there + difference, 0)} % of its own peak, ${size} ${side} the median, ${moment}`
  let highest = 0
  for (const value of median) if (value > highest) highest = value
  const percent = (100 * Math.abs(difference)) / there
  const share = there > leastShareForPercent * highest ? ` (${writeFixed(percent, percent < 10 ? 1 : 0)} % of it)` : ''
  return `lies ${size} ${side} the median of ${amountWords(there, unit, quantities)}${share}, ${moment}`
}

/** "540 N below the median", for a mark in the plot; "points": of percent of the own peak. */
export function differenceWords(
  { difference }: Pick<NonNullable<ComparedCurve['outlying']>, 'difference'>,
  unit: Comparison['unit'],
  quantities: Quantities,
): string {
  return `${amountWords(difference, unit, quantities)} ${difference < 0 ? 'below' : 'above'} the median`
}

function amountWords(amount: number, unit: Comparison['unit'], { force }: Quantities): string {
  const size = Math.abs(amount)
  if (unit === '%') return `${writeFixed(size, size < 10 ? 1 : 0)} points`
  return unit === 'N' ? force.text(size) : `${writeFixed(size, 0)} counts`
}

/** What curves are laid over each other by. */
const alignmentNames: Record<Comparison['alignAt'], string> = {
  onset: 'start of loading',
  peak: 'peak',
  break: 'break',
}

/** A moment of a curve in words: "4.2 s after the start of loading", "2.1 s before the break", "at 62 % of the time to peak". */
function momentWords(at: number, { timeUnit, alignAt }: Pick<Comparison, 'timeUnit' | 'alignAt'>): string {
  // In percent of the time from onset to peak, the peak lies at 100.
  if (timeUnit === '%' && alignAt !== 'break') return `at ${placeWords(alignAt === 'peak' ? 100 + at : at, '%')}`
  if (at === 0) return `at the ${alignmentNames[alignAt]}`
  return `${placeWords(Math.abs(at), timeUnit)} ${at < 0 ? 'before' : 'after'} the ${alignmentNames[alignAt]}`
}

/** A place of the time axis: "4.2 s", or "63 % of the time to peak". */
export function placeWords(at: number, timeUnit: Comparison['timeUnit']): string {
  if (timeUnit === '%') return `${writeFixed(at, 0)} % of the time to peak`
  const size = Math.abs(at)
  return `${writeFixed(at, size < 1 ? 3 : size < 10 ? 2 : 1)} s`
}

/** What median and band stand for, or why there are none. */
export function medianWords(curves: number): string {
  if (curves >= 3) return ''
  const none = curves === 1 ? 'One curve has no median.' : 'Two curves have no useful median.'
  return `${none} With three or more, their median and quartiles are drawn.`
}

/** How a curve stands apart from a plain break: it counts for nothing, it has no strength, its peak is a lower limit, or
 * nobody measured it. */
export function standingWords(
  summary: Pick<
    BreakSummary,
    'outcome' | 'ending' | 'setAside' | 'flags' | 'overruled' | 'peakN' | 'resultsOfSpecimen' | 'demo' | 'simulated'
  >,
  capacityN: number | null,
): string {
  const { setAside, outcome } = summary
  const words = [
    setAside !== null ? 'set aside, dashed' : outcome === 'break' ? null : `${outcomeWord(summary)}, no break`,
    isLowerLimit(summary, capacityN) ? 'peak at least' : null,
    resultsWords(summary.resultsOfSpecimen),
    isSimulated(summary) ? simulatedMark : null,
  ]
  return words.filter((word) => word !== null).join('; ')
}

/** That the curves are not all of one group, and what it means for the median of so many. */
export function severalGroupsWords(curves: number): string {
  return curves >= 3
    ? 'of more than one group: median and quartiles are of all of them together'
    : 'of more than one group'
}

/** What a break is called that is not among the curves: by its specimen too, where that is known. */
export function leftOutName(breakId: number, number: string | null): string {
  return number === null ? `break ${breakId}` : `${number}, break ${breakId}`
}

const notJudgedWords: Record<NonNullable<Comparison['notJudged']>, string> = {
  'too-few': 'Among fewer than five curves none is called an outlying one: too few to know what is usual.',
  'all-alike':
    'More than half of the curves lie equally far from the median curve, so there is no spread to judge the others by.',
}

/** How many of the curves are pointed out, and how that is meant. */
export function hintWords({ curves, notJudged }: Pick<Comparison, 'curves' | 'notJudged'>): string {
  if (notJudged !== null) return notJudgedWords[notJudged]
  const count = curves.filter(({ outlying }) => outlying !== null).length
  if (count === 0) return 'No curve stands out from the others. That is no proof that all are sound.'
  const which = count === 1 ? 'One curve stands' : `${count} curves stand`
  return `${which} out from the others: a hint to look at ${count === 1 ? 'it' : 'them'}, not a verdict. Nothing is left out of any result because of it.`
}

/** What the distance of the table is, and what median and quartiles stand for. */
export const distanceWords =
  'Distance: how far a curve lies from the median while it is loaded, from its start of loading to its break, or to its peak where it has none (root mean square). Median and quartiles are of the curves that are loaded at the time, and drawn where that is at least half of them.'
