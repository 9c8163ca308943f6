import type { ImportedValues } from '#contract/specimens/importedResult.ts'
import type { ImportField } from '#contract/specimens/importMapping.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { unnamedAdhesive } from './storedBlock.ts'

type Values = Omit<ImportedValues, 'number'>

/** What a table calls each value. */
const fields: readonly [key: keyof Values, field: ImportField][] = [
  ['adhesive', 'adhesive'],
  ['lot', 'lot'],
  ['wood', 'wood'],
  ['board', 'board'],
  ['jointType', 'jointType'],
  ['exposure', 'exposure'],
  ['place', 'place'],
  ['bondLineGapMm', 'bondLineGap'],
  ['overlapLengthMm', 'overlapLength'],
  ['overlapWidthMm', 'overlapWidth'],
  ['areaMm2', 'area'],
  ['gluedOn', 'gluedOn'],
]
const resultFields: readonly [key: keyof Values, field: ImportField][] = [
  ['peakN', 'load'],
  ['strengthMPa', 'strength'],
  ['woodFailurePercent', 'woodFailurePercent'],
  ['failurePattern', 'failurePattern'],
  ['brokenOn', 'brokenOn'],
  ['ageMonths', 'ageMonths'],
  ['note', 'note'],
]

/** The first field of a specimen that a table says and that is recorded otherwise; null: none. */
export function otherField(said: Values, stored: Values): ImportField | null {
  return fields.find(([key]) => !agrees(said[key], stored[key]))?.[1] ?? null
}

/** The first field of a result that a table says and that is recorded otherwise; null: none. */
export function otherResult(said: Values, stored: Values): ImportField | null {
  // Where there is a load, the strength follows from it and is not stored
  const compared = resultFields.filter(([key]) => key !== 'strengthMPa' || said.peakN === null)
  return compared.find(([key]) => !agrees(said[key], stored[key]))?.[1] ?? null
}

/** What a table leaves open agrees with everything; a computed value with what differs in its last digits. */
function agrees(said: number | string | null, stored: number | string | null): boolean {
  if (said === null || said === '') return true
  if (typeof said === 'number')
    return typeof stored === 'number' && Math.abs(said - stored) <= 1e-9 * Math.max(Math.abs(said), Math.abs(stored))
  return folded(said) === folded(String(stored ?? ''))
}

/** All that a table says of a block without a number, as one text: equal for equal blocks. */
export function blockKey(values: Values): string {
  const shown = [...fields, ...resultFields].map(([key]) => {
    const value = values[key]
    if (key === 'strengthMPa' && values.peakN !== null) return null
    if (key === 'adhesive' && value === '') return folded(unnamedAdhesive)
    return typeof value === 'number' ? value.toPrecision(9) : value === null ? null : folded(String(value))
  })
  return JSON.stringify(shown)
}
