import { readTypedNumber } from '#domain/units/typedNumber.ts'
import { convertUnit } from '#domain/units/unitSizes.ts'
import { askWhichNumber, notANumber, strangeUnit } from './notANumber.ts'
import { writeTyped } from './numbers.ts'

/** The unit of a field, and how a stored value is shown in it: shown = stored × factor + zeroAt. */
export type FieldUnit = { unit: string; factor: number; zeroAt?: number }

/** What a field says; null: nothing was typed. */
export type ReadQuantity = { stored: number | null } | { error: string }

/** A number without a unit. */
export const noUnit: FieldUnit = { unit: '', factor: 1 }

/** No instrument knows more digits, and after a conversion there and back they are the same again. */
const digitsKept = 12

/**
 * A typed number as it is stored, or one clear sentence. A number without a unit is in that of the field; one with a unit of
 * the same kind, as 25 kN or 1 3/16 in, is converted. `wanted`: what to write, within a sentence.
 */
export function readQuantity(text: string, { unit, factor, zeroAt = 0 }: FieldUnit, wanted: string): ReadQuantity {
  const typed = readTypedNumber(text)
  if (typed.kind === 'nothing') return { stored: null }
  if (typed.kind === 'not-a-number') return { error: notANumber(text, wanted) }
  if (typed.kind === 'ambiguous') return { error: askWhichNumber(text, typed) }
  const shown = convertUnit(typed.value, typed.unit, unit)
  if (shown === null) return { error: strangeUnit(text, wanted) }
  return { stored: Number(((shown - zeroAt) / factor).toPrecision(digitsKept)) }
}

/** A stored value as it is kept in a form, in the unit given, with every digit; null: an empty text. */
export function keptText(stored: number | null, { factor, zeroAt = 0 }: FieldUnit): string {
  return stored === null ? '' : String(Number((stored * factor + zeroAt).toPrecision(digitsKept)))
}

/** A typed text as it stands in a field after its unit became another; what names its own unit, or is no number, stays. */
export function convertTyped(text: string, from: string, to: string): string {
  const typed = readTypedNumber(text)
  if (from === to || typed.kind !== 'number' || typed.unit !== '') return text
  const converted = convertUnit(typed.value, from, to)
  return converted === null ? text : writeTyped(converted, 1)
}

/** A typed text with the unit that it was typed in behind it, so that it is the same quantity in every field. */
export function withItsUnit(text: string, unit: string): string {
  const typed = readTypedNumber(text)
  return typed.kind === 'number' && typed.unit === '' ? `${text} ${unit}` : text
}
