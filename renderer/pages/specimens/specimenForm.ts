import type { TroubleMessage } from '#contract/errors.ts'
import { type SpecimenFields, specimenFields } from '#contract/specimens/specimen.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { writeTyped } from '#words/units/numbers.ts'
import { type Quantities, type Quantity, quantitiesIn } from '#words/units/quantities.ts'
import { askForDay } from '#words/units/typedDay.ts'
import { keptText, readQuantity } from '#words/units/typedQuantity.ts'
import { sizesOf } from '../../parts/forms/overlapSizes.ts'
import type { UnitFields } from '../../parts/forms/typedTexts.ts'

/** The form as typed: every field a text. */
export type SpecimenTexts = Record<Exclude<keyof SpecimenFields, 'demo'>, string>
export type FormErrors = Partial<Record<keyof SpecimenTexts, string>>

export const emptyTexts: SpecimenTexts = {
  number: '',
  adhesive: '',
  lot: '',
  wood: '',
  board: '',
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

const lengthIn = ({ length }: Quantities) => length

/** The fields that have a unit. */
export const specimenUnits: UnitFields<keyof SpecimenTexts> = {
  bondLineGapMm: lengthIn,
  overlapLengthMm: lengthIn,
  overlapWidthMm: lengthIn,
  areaMm2: ({ area }) => area,
}

/** A specimen's fields as a form begins with them, in SI units. */
export function textsOf(fields: SpecimenFields): SpecimenTexts {
  const { length, area } = quantitiesIn('SI')
  return {
    number: fields.number,
    adhesive: fields.adhesive,
    lot: fields.lot,
    wood: fields.wood,
    board: fields.board,
    jointType: fields.jointType,
    exposure: fields.exposure,
    bondLineGapMm: keptText(fields.bondLineGapMm, length),
    overlapLengthMm: keptText(fields.overlapLengthMm, length),
    overlapWidthMm: keptText(fields.overlapWidthMm, length),
    areaMm2: keptText(fields.areaMm2, area),
    gluedOn: fields.gluedOn ?? '',
    place: fields.place,
    notes: fields.notes,
  }
}

/** Shares by which an area may differ from length times width and still be that: both were written with six digits. */
const sameArea = 1e-5

/**
 * The texts after a side changed from what stands in `before`: the area follows for as long as it says what the overlap said.
 * All texts as they are read.
 */
export function withArea(before: SpecimenTexts, next: SpecimenTexts, quantities: Quantities): SpecimenTexts {
  const { lengthMm, widthMm, areaMm2 } = sizesOf(before, quantities)
  const overlapMm2 = lengthMm === null || widthMm === null ? null : lengthMm * widthMm
  const follows =
    before.areaMm2 === '' ||
    (areaMm2 !== null && overlapMm2 !== null && Math.abs(areaMm2 - overlapMm2) <= sameArea * overlapMm2)
  if (!follows) return next
  const now = sizesOf(next, quantities)
  const area = now.lengthMm === null || now.widthMm === null ? null : now.lengthMm * now.widthMm
  return { ...next, areaMm2: writeTyped(area, quantities.area.factor) }
}

type Nominal = Pick<SpecimenFields, 'overlapLengthMm' | 'overlapWidthMm' | 'areaMm2'>

/** The texts with the nominal sizes of a joint type where nothing is written yet; `nominal` null: none are known. */
export function withNominal(shown: SpecimenTexts, nominal: Nominal | null, quantities: Quantities): SpecimenTexts {
  if (nominal === null || shown.overlapLengthMm + shown.overlapWidthMm + shown.areaMm2 !== '') return shown
  const { overlapLengthMm, overlapWidthMm } = nominal
  const overlapMm2 = overlapLengthMm === null || overlapWidthMm === null ? null : overlapLengthMm * overlapWidthMm
  return {
    ...shown,
    overlapLengthMm: writeTyped(overlapLengthMm, quantities.length.factor),
    overlapWidthMm: writeTyped(overlapWidthMm, quantities.length.factor),
    areaMm2: writeTyped(nominal.areaMm2 ?? overlapMm2, quantities.area.factor),
  }
}

/** What is wrong with the fields, with a number that another specimen has said beside it. */
export function withTaken(errors: FormErrors, trouble: TroubleMessage | null): FormErrors {
  return trouble?.code === 'conflict' ? { number: `${trouble.message} ${trouble.hint}`, ...errors } : errors
}

/** The fields that a form says, or one clear sentence for each field that cannot be. `texts`: as they are read. */
export function readSpecimen(
  texts: SpecimenTexts,
  { length, area }: Quantities,
  demo: boolean,
): { fields: SpecimenFields; errors: null } | { fields: null; errors: FormErrors } {
  const errors: FormErrors = {}
  const number = (key: keyof SpecimenTexts, quantity: Quantity, what: string, zeroAllowed: boolean): number | null => {
    const read = readQuantity(texts[key], quantity, `${what} ${inUnit(quantity.unit)}`)
    if ('error' in read) errors[key] = read.error
    else if (read.stored !== null && (read.stored < 0 || (read.stored === 0 && !zeroAllowed)))
      errors[key] = `${what[0]!.toUpperCase()}${what.slice(1)} must be more than 0 ${quantity.unit}.`
    return 'error' in read ? null : read.stored
  }
  if (texts.number.trim() === '') errors.number = 'Write the specimen number.'
  if (texts.adhesive.trim() === '') errors.adhesive = 'Write the adhesive.'
  const candidate = {
    number: texts.number,
    adhesive: texts.adhesive,
    lot: texts.lot,
    wood: texts.wood,
    board: texts.board,
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
    errors[key] ??= key === 'gluedOn' ? askForDay : 'This is too long or cannot be read.'
  }
  return { fields: null, errors }
}
