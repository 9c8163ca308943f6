import type { SpecimenFields } from '#contract/specimens/specimen.ts'

/** What tells a specimen from others, in one line. */
export function specimenWords(fields: SpecimenFields): string {
  return [fields.adhesive, fields.jointType, fields.exposure].filter((words) => words !== '').join(' · ')
}
