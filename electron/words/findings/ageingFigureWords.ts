import { ageInMonthsWords } from '../units/calendarDays.ts'
import { countOf, ofWords } from '../units/counts.ts'
import { writeCount } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'
import { stripBlockWords } from './stripWords.ts'

type Block = Parameters<typeof stripBlockWords>[0] & { ageMonths: number }
type Mean = { ageMonths: number; n: number; meanMPa: number | null; lowMPa: number | null; highMPa: number | null }
type Place = { ageMonths: number; meanMPa: number; lowMPa: number; highMPa: number }
type Picture = {
  name: string
  blocks: readonly Block[]
  means: readonly Mean[]
  curve: readonly Place[] | null
  upcomingMonths: readonly number[]
  endMonths: number
}

/** An age as a series counts it, months of a half year and years: "0 months", "18 months", "2 years". */
export function atAge(ageMonths: number): string {
  if (ageMonths > 0 && ageMonths % 12 === 0) return ageInMonthsWords(ageMonths)
  return countOf(Math.round(ageMonths), 'month')
}

/** When blocks were broken, as a part of a sentence. */
export function whenBroken(ageMonths: number | null): string {
  return ageMonths === null ? 'at an age that is not known' : `at ${atAge(ageMonths)}`
}

/** One block at its age. */
export function agedBlockWords(block: Block, strength: Quantity): string {
  return `${stripBlockWords(block, strength)}, ${atAge(block.ageMonths)}`
}

/** The mean of a group at one age, with its interval where there is one. */
export function agedMeanWords({ ageMonths, n, meanMPa, lowMPa, highMPa }: Mean, strength: Quantity): string {
  const interval =
    lowMPa === null || highMPa === null ? ', no interval' : ` (${strength.number(lowMPa)} to ${strength.text(highMPa)})`
  return `${atAge(ageMonths)}: mean ${strength.text(meanMPa)}${interval} of ${countOf(n, 'block')}`
}

/** An age that is still to come, with what the line leads one to expect where there is one. */
export function upcomingWords(ageMonths: number, curve: Picture['curve'], strength: Quantity): string {
  const place = curve?.find((one) => one.ageMonths >= ageMonths)
  const still = `${atAge(ageMonths)}: still to come`
  return place === undefined ? still : `${still}, ${expected(place, strength)}`
}

const expected = ({ meanMPa, lowMPa, highMPa }: Place, strength: Quantity) =>
  `${strength.text(meanMPa)} expected (${strength.number(lowMPa)} to ${strength.text(highMPa)})`

/** What a figure of several series beside each other is called. */
export function seriesTitle(count: number): string {
  return `Strength against age: ${countOf(count, 'series', 'series')}`
}

/** Why not all series are drawn, and how to see the others. */
export function drawnSeriesWords(drawn: number, all: number): string {
  return `${ofWords(drawn, all)} series are drawn.`
}

/** What the figure of a series over its ages shows. */
export function ageingFigureWords(picture: Picture, strength: Quantity): string {
  const { name, blocks, means, curve, upcomingMonths, endMonths } = picture
  const end = curve?.at(-1)
  return [
    `Strength against age of ${name}: ${countOf(blocks.length, 'block')} at ${countOf(means.length, 'age')}.`,
    ...means.map((mean) => `${agedMeanWords(mean, strength)}.`),
    end === undefined
      ? 'No line is drawn: too few ages.'
      : `The line averaged over the models leads to ${atAge(end.ageMonths)}: ${expected(end, strength)}.`,
    upcomingMonths.length === 0
      ? ''
      : `${writeCount(upcomingMonths.length)} of the ages are still to come, the last at ${atAge(endMonths)}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
