import type { Limits, TestPractice } from '#contract/settings/practice.ts'
import { writeTyped } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readNumber } from '../specimens/specimenForm.ts'

/** A limit of a practice: on which figure, and by what its stored value is multiplied to be shown. */
export type LimitKey = 'timeToFailureS' | 'rateNPerS' | 'rateMPaPerS' | 'speedMmPerMin'
export type PracticeTexts = { name: string; source: string; samplingBoundPercent: string } & Record<
  `${LimitKey}.least` | `${LimitKey}.most`,
  string
>
export type PracticeErrors = Partial<Record<keyof PracticeTexts, string>>

export const limitKeys: readonly LimitKey[] = ['timeToFailureS', 'rateNPerS', 'rateMPaPerS', 'speedMmPerMin']

/** What a limit is on, with its unit as shown. */
export function limitWords(key: LimitKey, { force, strength, length }: Quantities) {
  switch (key) {
    case 'timeToFailureS':
      return { name: 'Time to failure', unit: 's', factor: 1 }
    case 'rateNPerS':
      return { name: 'Loading rate', unit: `${force.unit}/s`, factor: force.factor }
    case 'rateMPaPerS':
      return { name: 'Rate of shear stress', unit: `${strength.unit}/s`, factor: strength.factor }
    case 'speedMmPerMin':
      return { name: 'Speed of the moving head', unit: `${length.unit}/min`, factor: length.factor }
  }
}

/** The form that shows a practice in the units of the program; null: a new one. */
export function practiceTexts(practice: TestPractice | null, quantities: Quantities): PracticeTexts {
  const texts: Record<string, string> = {
    name: practice?.name ?? '',
    source: practice?.source ?? '',
    samplingBoundPercent: writeTyped(practice?.samplingBoundPercent ?? null, 1),
  }
  for (const key of limitKeys) {
    const { factor } = limitWords(key, quantities)
    texts[`${key}.least`] = writeTyped(practice?.[key].least ?? null, factor)
    texts[`${key}.most`] = writeTyped(practice?.[key].most ?? null, factor)
  }
  return texts as PracticeTexts
}

/** The practice that a form says, or one clear sentence for each field that cannot be; `taken`: names of the others. */
export function readPractice(
  texts: PracticeTexts,
  quantities: Quantities,
  taken: readonly string[],
): { practice: TestPractice; errors: null } | { practice: null; errors: PracticeErrors } {
  const errors: PracticeErrors = {}
  const name = texts.name.trim()
  if (name === '') errors.name = 'Give the practice a name.'
  else if (taken.includes(name)) errors.name = `There is a practice “${name}” already.`
  const source = texts.source.trim()
  if (source === '') errors.source = 'Name the standard’s clause, or write “common practice, no source”.'
  const limits = Object.fromEntries(limitKeys.map((key) => [key, readLimits(texts, key, quantities, errors)]))
  const bound = readNumber(texts.samplingBoundPercent)
  if (bound === undefined || (bound !== null && bound <= 0))
    errors.samplingBoundPercent = 'Write a percentage above 0, or leave it empty.'
  if (Object.keys(errors).length > 0) return { practice: null, errors }
  const practice = { name, source, samplingBoundPercent: bound ?? null, ...limits } as TestPractice
  return { practice, errors: null }
}

function readLimits(texts: PracticeTexts, key: LimitKey, quantities: Quantities, errors: PracticeErrors): Limits {
  const { unit, factor } = limitWords(key, quantities)
  const one = (end: 'least' | 'most') => {
    const text = texts[`${key}.${end}`]
    const typed = readNumber(text)
    if (typed === undefined) errors[`${key}.${end}`] = `“${text.trim()}” is not a number. Write it in ${unit}.`
    else if (typed !== null && typed < 0) errors[`${key}.${end}`] = 'It cannot be less than 0.'
    return typed == null ? null : typed / factor
  }
  const limits = { least: one('least'), most: one('most') }
  if (limits.least !== null && limits.most !== null && limits.least > limits.most)
    errors[`${key}.most`] = 'It must not be below the least.'
  return limits
}

/** Limits in words: "5 to 60 s", "at most 1 %"; null: none on either side. */
export function limitText({ least, most }: Limits, unit: string, factor: number): string | null {
  if (least === null && most === null) return null
  const shown = (value: number) => String(Number((value * factor).toPrecision(4)))
  if (least === null) return `at most ${shown(most!)} ${unit}`
  if (most === null) return `at least ${shown(least)} ${unit}`
  return least === most ? `${shown(least)} ${unit}` : `${shown(least)} to ${shown(most)} ${unit}`
}

/** Everything that a practice asks for, in words. */
export function practiceWords(practice: TestPractice, quantities: Quantities): string {
  const parts = limitKeys.flatMap((key) => {
    const { name, unit, factor } = limitWords(key, quantities)
    const text = limitText(practice[key], unit, factor)
    return text === null ? [] : [`${name.toLowerCase()} ${text}`]
  })
  if (practice.samplingBoundPercent !== null) parts.push(`sampling bound at most ${practice.samplingBoundPercent} %`)
  return parts.length === 0 ? 'no limits' : parts.join('; ')
}
