import type { TemperatureUnit } from '#contract/findings/climate.ts'
import { celsius } from '#domain/climate/celsius.ts'
import { loggerFault } from '#words/findings/climate/loggerWords.ts'
import { bare, cellNumber, longestNumber, type Read } from '../import/cellNumber.ts'
import type { NumberWriting } from '../import/decimalSign.ts'
import type { Cell } from '../sheets/sheet.ts'

/** Colder or warmer no store is, °C; what lies beyond is a fault of the sensor, or another unit. */
const storeC = { from: -60, to: 80 } as const

const plain = /^[+-]?\d+(?:\.\d+)?$/
const unitBehind = /^([\s\S]*?\d)\s*([^\d\s.,][^\d]*)$/

/** The number of a cell, with the unit that stands behind it ('' without). */
function numberAndUnit(cell: Cell, writing: NumberWriting): Read<{ value: number; unit: string }> {
  if (cell.kind === 'number') return { value: { value: cell.number!, unit: cell.unit } }
  const text = cell.text.trim()
  // What nearly every cell of millions holds
  if (cell.kind === 'text' && writing.sign === '.' && plain.test(text))
    return { value: { value: Number(text), unit: '' } }
  const parts = cell.kind === 'text' && text.length <= longestNumber ? unitBehind.exec(text) : null
  const read = cellNumber(parts === null ? cell : { ...cell, text: parts[1]! }, bare, writing)
  return 'fault' in read ? read : { value: { value: read.value, unit: parts?.[2]?.trim() ?? '' } }
}

const temperatureUnits: ReadonlyMap<string, TemperatureUnit> = new Map([
  ['c', 'C'],
  ['f', 'F'],
])

/** The temperature of a cell in the unit of its column; a unit within the cell goes before that. */
export function loggerTemperature(cell: Cell, column: TemperatureUnit, writing: NumberWriting): Read<number> {
  const read = numberAndUnit(cell, writing)
  if ('fault' in read) return read
  const { value, unit } = read.value
  const own = unit === '' ? column : temperatureUnits.get(unit.replaceAll(/[°\s]|deg\.?/gi, '').toLowerCase())
  if (own === undefined) return { fault: loggerFault.strangeUnit(cell.text, '°C or °F') }
  const inC = celsius(value, own)
  if (!(inC >= storeC.from && inC <= storeC.to)) return { fault: loggerFault.noAirTemperature(`${value} °${own}`) }
  return { value: own === column ? value : column === 'C' ? inC : (inC * 9) / 5 + 32 }
}

/** The relative humidity of a cell, percent. */
export function loggerHumidity(cell: Cell, writing: NumberWriting): Read<number> {
  const read = numberAndUnit(cell, writing)
  if ('fault' in read) return read
  const { value, unit } = read.value
  if (!/^(?:%?\s*(?:r\.?\s?h\.?|r\.?\s?f\.?)?)$/i.test(unit)) return { fault: loggerFault.strangeUnit(cell.text, '%') }
  return value >= 0 && value <= 100 ? { value } : { fault: loggerFault.noHumidity(value) }
}
