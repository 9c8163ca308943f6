import type { Limits, TestPractice } from '#contract/settings/practice.ts'
import { type LimitKey, limitKeys, limitWords } from '#words/settings/practiceWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { keptText, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../parts/forms/typedTexts.ts'

export type PracticeTexts = { name: string; source: string; samplingBoundPercent: string } & Record<
  `${LimitKey}.least` | `${LimitKey}.most`,
  string
>
export type PracticeErrors = Partial<Record<keyof PracticeTexts, string>>

/** The fields whose unit follows the units of the program. */
export const practiceUnits: UnitFields<keyof PracticeTexts> = Object.fromEntries(
  limitKeys.flatMap((key) => {
    const unitIn = (quantities: Quantities) => limitWords(key, quantities)
    return [
      [`${key}.least`, unitIn],
      [`${key}.most`, unitIn],
    ]
  }),
)

const percent = { unit: '%', factor: 1 }

/** A practice as a form begins with it, in SI units; null: a new one. */
export function practiceTexts(practice: TestPractice | null): PracticeTexts {
  const texts: Record<string, string> = {
    name: practice?.name ?? '',
    source: practice?.source ?? '',
    samplingBoundPercent: keptText(practice?.samplingBoundPercent ?? null, percent),
  }
  for (const key of limitKeys) {
    const unit = limitWords(key, quantitiesIn('SI'))
    texts[`${key}.least`] = keptText(practice?.[key].least ?? null, unit)
    texts[`${key}.most`] = keptText(practice?.[key].most ?? null, unit)
  }
  return texts as PracticeTexts
}

/**
 * The practice that a form says, or one clear sentence for each field that cannot be. `texts`: as they are read; `taken`: names
 * of the others.
 */
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
  const bound = readQuantity(texts.samplingBoundPercent, percent, 'a percentage above 0, or leave it empty')
  if ('error' in bound) errors.samplingBoundPercent = bound.error
  else if (bound.stored !== null && bound.stored <= 0)
    errors.samplingBoundPercent = 'The sampling bound must be above 0 %, or empty.'
  if (Object.keys(errors).length > 0) return { practice: null, errors }
  const samplingBoundPercent = 'stored' in bound ? bound.stored : null
  const practice = { name, source, samplingBoundPercent, ...limits } as TestPractice
  return { practice, errors: null }
}

function readLimits(texts: PracticeTexts, key: LimitKey, quantities: Quantities, errors: PracticeErrors): Limits {
  const unit = limitWords(key, quantities)
  const one = (end: 'least' | 'most') => {
    const read = readQuantity(texts[`${key}.${end}`], unit, `it ${inUnit(unit.unit)}`)
    if ('error' in read) errors[`${key}.${end}`] = read.error
    else if (read.stored !== null && read.stored < 0) errors[`${key}.${end}`] = 'It cannot be less than 0.'
    return 'error' in read ? null : read.stored
  }
  const limits = { least: one('least'), most: one('most') }
  if (limits.least !== null && limits.most !== null && limits.least > limits.most)
    errors[`${key}.most`] = 'It must not be below the least.'
  return limits
}
