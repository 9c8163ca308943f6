import { type CatalogueFields, type CatalogueKind, catalogueFields } from '#contract/programme/catalogue.ts'
import { inUnit } from '#words/units/notANumber.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { askForDay } from '#words/units/typedDay.ts'
import { type FieldUnit, keptText, noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'

/** How a detail of an entry is typed. */
export type EntryField = {
  key: string
  label: string
  typed: 'line' | 'note' | 'day' | 'number' | 'length' | 'area' | 'owner'
  unit?: string
  hint?: string
}

const woodFields: readonly EntryField[] = [
  { key: 'densityKgPerM3', label: 'Density', typed: 'number', unit: 'kg/m³' },
  { key: 'moisturePercent', label: 'Moisture', typed: 'number', unit: '%' },
  { key: 'ringAngleDeg', label: 'Ring angle', typed: 'number', unit: '°', hint: '0: the rings lie flat.' },
]

const detailsOf: Readonly<Record<CatalogueKind, readonly EntryField[]>> = {
  adhesive: [
    { key: 'adhesiveClass', label: 'Class', typed: 'line', hint: 'casein, epoxy, one-part polyurethane …' },
    { key: 'maker', label: "Maker's name", typed: 'line' },
    { key: 'mix', label: 'Mix', typed: 'line', hint: 'As you say it: 2 : 1 by weight.' },
    { key: 'openTimeMin', label: 'Open time', typed: 'number', unit: 'min' },
    { key: 'clampTimeMin', label: 'Clamp time', typed: 'number', unit: 'min' },
    { key: 'safetyNote', label: 'Safety', typed: 'note' },
  ],
  lot: [
    { key: 'adhesive', label: 'Lot of', typed: 'owner' },
    { key: 'openedOn', label: 'Opened on', typed: 'day' },
    { key: 'expiresOn', label: 'Expires on', typed: 'day' },
    { key: 'bottle', label: 'Bottle', typed: 'line' },
  ],
  wood: [{ key: 'species', label: 'Species', typed: 'line' }, ...woodFields],
  board: [{ key: 'wood', label: 'Board of', typed: 'owner' }, ...woodFields],
  'joint-type': [
    { key: 'overlapLengthMm', label: 'Nominal overlap length', typed: 'length' },
    { key: 'overlapWidthMm', label: 'Nominal overlap width', typed: 'length' },
    { key: 'areaMm2', label: 'Nominal area', typed: 'area' },
  ],
  exposure: [],
  operator: [],
  place: [
    { key: 'capacityBlocks', label: 'Room for', typed: 'number', unit: 'blocks' },
    { key: 'temperatureC', label: 'Temperature', typed: 'number', unit: '°C' },
    { key: 'humidityPercent', label: 'Relative humidity', typed: 'number', unit: '%' },
  ],
}

const name: EntryField = { key: 'name', label: 'Name', typed: 'line' }
const notes: EntryField = { key: 'notes', label: 'Notes', typed: 'note' }

/** The fields of an entry of a kind, in the order in which they are asked. */
export function entryFieldsOf(kind: CatalogueKind): readonly EntryField[] {
  return [name, ...detailsOf[kind], notes]
}

export type EntryTexts = Record<string, string>

/** The fields whose unit follows the program's. */
export const entryUnits: UnitFields<string> = {
  overlapLengthMm: ({ length }) => length,
  overlapWidthMm: ({ length }) => length,
  areaMm2: ({ area }) => area,
}

const isFigure = ({ typed }: EntryField) => typed === 'number' || typed === 'length' || typed === 'area'

/** An entry's fields as a form begins with them, in SI units; null: an entry that is new. */
export function entryTextsOf(kind: CatalogueKind, fields: CatalogueFields | null): EntryTexts {
  const stored = (fields ?? {}) as Record<string, string | number | null>
  return Object.fromEntries(
    entryFieldsOf(kind).map((field) => {
      const value = stored[field.key] ?? null
      return [field.key, typeof value === 'number' ? keptText(value, noUnit) : (value ?? '')]
    }),
  )
}

export type EntryErrors = Record<string, string>

/** The fields that a form says, or a sentence for each that cannot be. `texts`: as they are read. */
export function readEntry(
  kind: CatalogueKind,
  texts: EntryTexts,
  { length, area }: Quantities,
): { fields: CatalogueFields } | { errors: EntryErrors } {
  const errors: EntryErrors = {}
  const candidate: Record<string, unknown> = { kind }
  for (const field of entryFieldsOf(kind)) {
    const text = texts[field.key] ?? ''
    if (!isFigure(field)) candidate[field.key] = field.typed === 'day' && text === '' ? null : text
    else {
      const unit: FieldUnit = field.typed === 'length' ? length : field.typed === 'area' ? area : noUnit
      const what = field.label.toLowerCase()
      const read = readQuantity(text, unit, unit === noUnit ? what : `${what} ${inUnit(unit.unit)}`)
      if ('error' in read) errors[field.key] = read.error
      else candidate[field.key] = read.stored
    }
  }
  const parsed = catalogueFields.safeParse(candidate)
  if (parsed.success && Object.keys(errors).length === 0) return { fields: parsed.data }
  for (const issue of parsed.error?.issues ?? []) {
    const field = entryFieldsOf(kind).find(({ key }) => key === issue.path[0])
    if (field !== undefined) errors[field.key] ??= cannotBe(field, texts[field.key] ?? '')
  }
  return { errors }
}

function cannotBe({ typed, label, key }: EntryField, text: string): string {
  if (text.trim() === '') return key === 'name' ? 'Write the name.' : 'Say which adhesive it is a lot of.'
  if (typed === 'day') return askForDay
  return typed === 'line' || typed === 'note' || typed === 'owner' ? 'This is too long.' : `${label} cannot be that.`
}
