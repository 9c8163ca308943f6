// Held by tests/archive/specimens/import/storeImport.spec.ts.
import type { ImportedValues } from '#contract/specimens/importedResult.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { TypedResult } from '#contract/specimens/typedResult.ts'

/** What a specimen is said to be glued with where its table does not say so. */
export const unnamedAdhesive = '(not named)'

/** Why a specimen of which an import that was set aside said all is recorded anew. */
export const broughtInAgain = (fileName: string) => `Brought in again from ${fileName}`

/** The specimen that a block of a table becomes. */
export function specimenOf(values: ImportedValues, number: string, demo: boolean): SpecimenFields {
  const { adhesive, lot, wood, board, jointType, exposure, place, bondLineGapMm, areaMm2, gluedOn } = values
  const { overlapLengthMm, overlapWidthMm } = values
  return {
    ...{ number, lot, wood, board, jointType, exposure, place, bondLineGapMm, areaMm2, gluedOn },
    ...{ overlapLengthMm, overlapWidthMm, notes: '', demo },
    adhesive: adhesive === '' ? unnamedAdhesive : adhesive,
  }
}

type OfTable = 'peakN' | 'strengthMPa' | 'woodFailurePercent' | 'failurePattern' | 'brokenOn' | 'ageMonths' | 'note'

/** What a table says of its result; a strength that follows from load and area is not kept beside them. */
export function resultOf(values: ImportedValues): Pick<TypedResult, OfTable> {
  const { peakN, strengthMPa, woodFailurePercent, failurePattern, brokenOn, ageMonths, note } = values
  return {
    ...{ peakN, woodFailurePercent, failurePattern, brokenOn, ageMonths, note },
    strengthMPa: peakN === null ? strengthMPa : null,
  }
}
