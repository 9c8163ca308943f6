import { type SpecimenFields, specimenFields } from '#contract/specimens/specimen.ts'
import { notANumber } from '#words/units/notANumber.ts'
import { writeTyped } from '#words/units/numbers.ts'
import type { Quantities, Quantity } from '#words/units/quantities.ts'
import { readNumber } from '../../widgets/typedNumber.ts'

/** The form as typed: every field a text. */
export type SpecimenTexts = Record<Exclude<keyof SpecimenFields, 'demo'>, string>
export type FormErrors = Partial<Record<keyof SpecimenTexts, string>>

export const emptyTexts: SpecimenTexts = {
  number: '',
  adhesive: '',
  lot: '',
  jointType: '',
  exposure: '',
  bondLineGapMm: '',
  overlapLengthMm: '',
  overlapWidthMm: '',
  areaMm2: '',
  gluedOn: '',
  place: '',
  notes: '',
}

/** The form that shows a specimen's fields in the units of the program. */
export function textsOf(fields: SpecimenFields, { length, area }: Quantities): SpecimenTexts {
  return {
    number: fields.number,
    adhesive: fields.adhesive,
    lot: fields.lot,
    jointType: fields.jointType,
    exposure: fields.exposure,
    bondLineGapMm: writeTyped(fields.bondLineGapMm, length.factor),
    overlapLengthMm: writeTyped(fields.overlapLengthMm, length.factor),
    overlapWidthMm: writeTyped(fields.overlapWidthMm, length.factor),
    areaMm2: writeTyped(fields.areaMm2, area.factor),
    gluedOn: fields.gluedOn ?? '',
    place: fields.place,
    notes: fields.notes,
  }
}

/** The area of an overlap, in the units typed, or '' when a side is missing. */
export function areaFromOverlap(lengthText: string, widthText: string): string {
  const length = readNumber(lengthText)
  const width = readNumber(widthText)
  return length && width && length > 0 && width > 0 ? String(Number((length * width).toPrecision(6))) : ''
}

/** The fields that a form says, or one clear sentence for each field that cannot be. */
export function readSpecimen(
  texts: SpecimenTexts,
  { length, area }: Quantities,
  demo: boolean,
): { fields: SpecimenFields; errors: null } | { fields: null; errors: FormErrors } {
  const errors: FormErrors = {}
  const number = (key: keyof SpecimenTexts, quantity: Quantity, what: string, zeroAllowed: boolean): number | null => {
    const typed = readNumber(texts[key])
    if (typed === undefined) errors[key] = notANumber(texts[key], `${what} in ${quantity.unit}`)
    else if (typed !== null && (typed < 0 || (typed === 0 && !zeroAllowed)))
      errors[key] = `${what[0]!.toUpperCase()}${what.slice(1)} must be more than 0 ${quantity.unit}.`
    return typed === undefined || typed === null ? null : typed / quantity.factor
  }
  if (texts.number.trim() === '') errors.number = 'Write the specimen number.'
  if (texts.adhesive.trim() === '') errors.adhesive = 'Write the adhesive.'
  const candidate = {
    number: texts.number,
    adhesive: texts.adhesive,
    lot: texts.lot,
    jointType: texts.jointType,
    exposure: texts.exposure,
    bondLineGapMm: number('bondLineGapMm', length, 'the gap', true),
    overlapLengthMm: number('overlapLengthMm', length, 'the length', false),
    overlapWidthMm: number('overlapWidthMm', length, 'the width', false),
    areaMm2: number('areaMm2', area, 'the area', false),
    gluedOn: texts.gluedOn === '' ? null : texts.gluedOn,
    place: texts.place,
    notes: texts.notes,
    demo,
  }
  if (Object.keys(errors).length > 0) return { fields: null, errors }
  const parsed = specimenFields.safeParse(candidate)
  if (parsed.success) return { fields: parsed.data, errors: null }
  for (const issue of parsed.error.issues) {
    const key = issue.path[0] as keyof SpecimenTexts
    errors[key] ??= key === 'gluedOn' ? 'Write the date as year-month-day.' : 'This is too long or cannot be read.'
  }
  return { fields: null, errors }
}
