import { type AskedFilter, type ListFilter, listFilter } from '#contract/listQuery.ts'
import { nameTooLong } from '#words/programme/catalogueWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { type FieldUnit, keptText, noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../forms/typedTexts.ts'

type NumberKey = 'gapLeastMm' | 'gapMostMm' | 'ageLeastMonths' | 'ageMostMonths'

/** A filter as typed; `studyId` is the number of the study chosen. */
export type FilterTexts = Record<keyof ListFilter, string>
export type FilterErrors = Partial<Record<keyof FilterTexts, string>>

const lengthIn = ({ length }: Quantities): FieldUnit => length

/** The fields that have a unit. */
export const filterUnits: UnitFields<keyof FilterTexts> = { gapLeastMm: lengthIn, gapMostMm: lengthIn }

/** A filter as its form begins with it, in SI units. */
export function textsOfFilter(filter: AskedFilter): FilterTexts {
  const { length } = quantitiesIn('SI')
  const { studyId, gapLeastMm, gapMostMm, ageLeastMonths, ageMostMonths, ...names } = listFilter.parse(filter)
  return {
    ...names,
    studyId: studyId === null ? '' : String(studyId),
    gapLeastMm: keptText(gapLeastMm, length),
    gapMostMm: keptText(gapMostMm, length),
    ageLeastMonths: keptText(ageLeastMonths, noUnit),
    ageMostMonths: keptText(ageMostMonths, noUnit),
  }
}

/** The filter that the fields say, or one clear sentence for each that cannot be. */
export function readFilter(
  texts: FilterTexts,
  { length }: Quantities,
): { filter: ListFilter | null; errors: FilterErrors } {
  const errors: FilterErrors = {}
  const number = (key: NumberKey, unit: FieldUnit, what: string): number | null => {
    const read = readQuantity(texts[key], unit, what)
    if ('error' in read) errors[key] = read.error
    else if (read.stored !== null && read.stored < 0) errors[key] = 'Write 0 or more.'
    return 'error' in read ? null : read.stored
  }
  const ends = (least: NumberKey, most: NumberKey, unit: FieldUnit, what: string) => {
    const [from, to] = [number(least, unit, what), number(most, unit, what)]
    if (from !== null && to !== null && from > to) errors[most] ??= 'The end lies before the beginning.'
    return { [least]: from, [most]: to }
  }
  const { studyId, ...names } = texts
  const read = {
    ...names,
    studyId: studyId === '' ? null : Number(studyId),
    ...ends('gapLeastMm', 'gapMostMm', length, `the gap ${inUnit(length.unit)}`),
    ...ends('ageLeastMonths', 'ageMostMonths', noUnit, 'the age in months'),
  }
  const parsed = listFilter.safeParse(read)
  for (const { path } of parsed.error?.issues ?? []) errors[path[0] as keyof FilterTexts] ??= nameTooLong
  return { filter: parsed.success && Object.keys(errors).length === 0 ? parsed.data : null, errors }
}

/** How many factors a filter asks about. */
export function asksAbout(filter: AskedFilter): number {
  const { gapLeastMm, gapMostMm, ageLeastMonths, ageMostMonths, studyId, ...names } = listFilter.parse(filter)
  const isAsked = (...ends: (number | null)[]) => ends.some((end) => end !== null)
  return (
    Object.values(names).filter((name) => name !== '').length +
    [isAsked(gapLeastMm, gapMostMm), isAsked(ageLeastMonths, ageMostMonths), isAsked(studyId)].filter(Boolean).length
  )
}
