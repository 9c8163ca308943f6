import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'

/** The names of a specimen where the catalogue calls everything as it was written. */
export function namedAsWritten({
  adhesive,
  lot,
  wood,
  board,
  jointType,
  exposure,
  place,
}: SpecimenFields): SpecimenSummary['named'] {
  return { adhesive, lot, wood, board, jointType, exposure, place }
}
