import type { ClimateBand, StoredSeries } from '#contract/findings/climateAnswers.ts'
import { ageInWords } from '../../breaks/groupName.ts'
import { ageInMonthsWords } from '../../units/calendarDays.ts'
import { countOf } from '../../units/counts.ts'
import type { Quantity } from '../../units/quantities.ts'
import { utcDayWords } from '../../units/times.ts'

type Text = (stored: number) => string

/** One place of a band: its day, the mean, and how far the values went. */
export function bandPlaceWords(
  { timeS, min, mean, max }: { timeS: number; min: number; mean: number; max: number },
  text: Text,
): string {
  const range = min === max ? '' : `, from ${text(min)} to ${text(max)}`
  return `${utcDayWords(timeS)}: ${text(mean)}${range}`
}

type Panel = {
  name: string
  quantity: { text: Text }
  band: ClimateBand
  gaps: readonly object[]
  days: readonly { timeS: number; name: string }[]
}

/** What a band of climate shows: its span, how far it goes, and the days that are marked. */
export function climatePanelWords({ name, quantity: { text }, band, gaps, days }: Panel): string {
  const { timeS, min, max } = band
  const lowest = min.reduce((one, other) => Math.min(one, other), Number.POSITIVE_INFINITY)
  const highest = max.reduce((one, other) => Math.max(one, other), Number.NEGATIVE_INFINITY)
  const span = `From ${utcDayWords(timeS[0]!)} to ${utcDayWords(timeS.at(-1)!)} the ${name} was ${text(lowest)} to ${text(highest)}.`
  const missing = gaps.length === 0 ? '' : ` Readings are missing in ${countOf(gaps.length, 'stretch', 'stretches')}.`
  const marked =
    days.length === 0 ? '' : ` Marked: ${days.map((day) => `${day.name} on ${utcDayWords(day.timeS)}`).join(', ')}.`
  return `${span}${missing}${marked}`
}

/** Which files of loggers a figure of a store's climate rests on. */
export function readingsAbout(files: readonly { fileName: string; fileSha256: string }[]): string {
  return `Readings: ${files.map(({ fileName, fileSha256 }) => `${fileName} (${fileSha256.slice(0, 16)})`).join(', ')}.`
}

/** So many pulls to come are named; the others are counted. */
const mostNamed = 4

/** When blocks are to leave the store: the next pulls, how many more there are, and the last. */
export function toComeWords(pulls: readonly { ageMonths: number; dueS: number }[]): string {
  const named = pulls.slice(0, pulls.length === mostNamed + 1 ? mostNamed + 1 : mostNamed)
  const more = pulls.length - named.length
  const each = named.map(({ ageMonths, dueS }) => `${ageInMonthsWords(ageMonths)} on ${utcDayWords(dueS)}`)
  const others = more === 0 ? '' : `, and ${more} more until ${utcDayWords(pulls.at(-1)!.dueS)}`
  return `Pulls to come, by age: ${each.join(', ')}${others}.`
}

type AtAge = StoredSeries['ages'][number]

/** The blocks of one age: how many, their mean, its interval, and when they were broken. */
export function strengthAtAgeWords({ ageMonths, n, meanMPa, lowMPa, highMPa, brokenS }: AtAge, strength: Quantity) {
  const interval = lowMPa === null ? '' : ` (95 % interval ${strength.number(lowMPa)} to ${strength.text(highMPa)})`
  return `${ageInWords(ageMonths)}: mean ${strength.text(meanMPa)} of ${countOf(n, 'block')}${interval}, broken about ${utcDayWords(brokenS)}`
}

/** What the means of a series show, age by age. */
export function storedStrengthWords(name: string, ages: readonly AtAge[], strength: Quantity): string {
  if (ages.length === 0) return `No block of ${name} counts.`
  return `${name}. ${ages.map((one) => `${strengthAtAgeWords(one, strength)}.`).join(' ')}`
}
