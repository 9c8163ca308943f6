import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'

/** What fields are called on the screen. */
export const fieldNames: Record<keyof SpecimenFields, string> = {
  number: 'Number',
  adhesive: 'Adhesive',
  lot: 'Lot or bottle',
  wood: 'Wood',
  board: 'Board',
  jointType: 'Joint type',
  exposure: 'Exposure',
  bondLineGapMm: 'Bond line gap',
  overlapLengthMm: 'Overlap length',
  overlapWidthMm: 'Overlap width',
  areaMm2: 'Bonded area',
  gluedOn: 'Glued on',
  place: 'Place on the shelf',
  notes: 'Notes',
  demo: 'Demo',
}

/** The fields in which a revision differs from the one before it. */
export function changedFields(before: Specimen, after: Specimen): (keyof SpecimenFields)[] {
  return (Object.keys(fieldNames) as (keyof SpecimenFields)[]).filter((key) => before.fields[key] !== after.fields[key])
}
