import type { Limits, TestPractice } from '#contract/settings/practice.ts'
import { type LimitKey, limitKeys, limitWords } from '#words/settings/practiceWords.ts'
import { notANumber } from '#words/units/notANumber.ts'
import { writeTyped } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readNumber } from '../../widgets/typedNumber.ts'

export type PracticeTexts = { name: string; source: string; samplingBoundPercent: string } & Record<
  `${LimitKey}.least` | `${LimitKey}.most`,
  string
>
export type PracticeErrors = Partial<Record<keyof PracticeTexts, string>>

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
    if (typed === undefined) errors[`${key}.${end}`] = notANumber(text, `it in ${unit}`)
    else if (typed !== null && typed < 0) errors[`${key}.${end}`] = 'It cannot be less than 0.'
    return typed == null ? null : typed / factor
  }
  const limits = { least: one('least'), most: one('most') }
  if (limits.least !== null && limits.most !== null && limits.least > limits.most)
    errors[`${key}.most`] = 'It must not be below the least.'
  return limits
}
