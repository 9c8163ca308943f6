import type { DecimalSign } from '#contract/specimens/importMapping.ts'
import { readTypedNumber } from '#domain/units/typedNumber.ts'
import { convertUnit } from '#domain/units/unitSizes.ts'
import { cellFault } from '#words/specimens/import/rejectedWords.ts'
import type { Cell } from '../sheets/sheet.ts'
import { type NumberWriting, withPoint } from './decimalSign.ts'

/** A value, or what is wrong with the cell as the end of a sentence. */
export type Read<Value> = { value: Value } | { fault: string }

/** What numbers of a field are in: the unit to convert to, that of the column (null: every cell must name its own), and those that are understood. */
export type NumberUnit = { readonly to: string; readonly column: string | null; readonly known: readonly string[] }

/** Nobody writes a longer number, with its unit. */
export const longestNumber = 100

/** What a measured field is in where its numbers stand without a unit: none is needed. */
export const bare: NumberUnit = { to: '', column: '', known: [] }

/** What is wrong with a cell that holds no number at all, whatever field it is for; null: it may hold one. */
function noNumberIn({ kind, text }: Cell): string | null {
  if (kind === 'date') return cellFault.isDate(text)
  if (kind === 'time') return cellFault.isTime
  if (kind === 'truth') return cellFault.isTruth(text)
  if (kind === 'error') return cellFault.isError(text)
  return kind === 'unstored' ? cellFault.unstored : null
}

/** The number of a cell in the unit asked for; a unit within the cell goes before that of the column. */
export function cellNumber(cell: Cell, unit: NumberUnit, writing: NumberWriting): Read<number> {
  const other = noNumberIn(cell)
  if (other !== null) return { fault: other }
  if (cell.number !== null) return inUnit(cell.number, cell.unit, unit, `${cell.number} ${cell.unit}`.trim())
  if (cell.text.length > longestNumber) return { fault: cellFault.notANumber(cell.text) }
  const plain = writing.sign === null ? cell.text : withPoint(cell.text, writing.sign)
  if (plain === null) return { fault: cellFault.otherSign(cell.text, writing.sign as DecimalSign) }
  const typed = readTypedNumber(plain)
  if (typed.kind === 'ambiguous') return { fault: cellFault.twoNumbers(cell.text, typed.asDecimal, typed.asThousands) }
  if (typed.kind !== 'number') return { fault: cellFault.notANumber(cell.text) }
  if (writing.sign === null && !writing.lonePoint && /^\s*[+-]?[1-9]\d{0,2}\.\d{3}(?!\d)/.test(cell.text))
    return { fault: cellFault.twoNumbers(cell.text, typed.value, typed.value * 1000) }
  return inUnit(typed.value, typed.unit, unit, cell.text)
}

function inUnit(value: number, written: string, { to, column, known }: NumberUnit, text: string): Read<number> {
  const from = written === '' ? column : written
  // Nothing is nothing in every unit
  if (from === null) return value === 0 ? { value } : { fault: cellFault.noUnit(text) }
  const converted = to === '' && from !== '' ? null : convertUnit(value, from, to)
  return converted === null ? { fault: cellFault.strangeUnit(text, known) } : { value: converted }
}
