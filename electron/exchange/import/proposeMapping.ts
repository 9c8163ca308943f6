import {
  type ColumnName,
  dayFields,
  type FieldSource,
  type ImportField,
  type ImportMapping,
  importField,
  type MeasuredField,
  unitsOfField,
} from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import type { Sheet, SheetRow } from '../sheets/sheet.ts'
import { cellDate } from './cellDate.ts'
import { type Condition, conditionOf } from './conditionOf.ts'
import { type HeadingMeaning, headingMeaning } from './headingMeaning.ts'

/** A column with what its heading says of it; `ageMonths`: the heading is the age of the blocks below it, and nothing else. */
type Told = HeadingMeaning & { column: number; name: ColumnName; coloured: boolean; ageMonths: number | null }

/** Proposes how a sheet becomes blocks, from its headings; the person has the last word. */
export function proposeMapping(sheet: Sheet, headerRow: number, columns: readonly SheetColumn[]): ImportMapping {
  const above = cellsAbove(sheet, headerRow)
  const told = columns.map(({ heading, name, fills }, column): Told => {
    const { exposure, ageMonths } = conditionOf(heading)
    const isAge = exposure === '' && ageMonths !== null
    // Where headings take two rows, those that take one alone may stand in the upper
    const meaning = headingMeaning(heading === '' ? (above[column]?.text ?? '') : heading)
    return {
      ...(isAge ? { field: null, unit: null, ordinal: null } : meaning),
      ...{ column, name, coloured: fills.some(({ fill }) => fill !== null), ageMonths: isAge ? ageMonths : null },
    }
  })
  const base = { headerRow, ...(sheet.name === null ? {} : { sheet: sheet.name }) }
  const several = replicatesOf(told, columns)
  if (several === null) return { ...base, layout: 'row-per-specimen', ...singleFields(sheet, headerRow, told, null) }
  const { measured, replicates, companions } = several
  const rest = told.filter(({ column }) => !several.taken.has(column))
  const titles = titlesAbove(sheet, headerRow, replicates)
  const unit = replicates.find((one) => one.unit !== null)?.unit ?? titles.unit
  const open = { measured, unit, coloured: replicates.some(({ coloured }) => coloured) }
  const { fields } = singleFields(sheet, headerRow, rest, open)
  const names = replicates.map(({ name }) => name)
  const restarts = new Set(replicates.map(({ ordinal }) => ordinal)).size < replicates.length
  const conditions = replicates.map(({ ageMonths }, place): Condition => {
    const { exposure, ageMonths: above } = conditionOf(restarts ? (titles.exposures?.[place] ?? '') : '')
    return { exposure: fields.exposure === undefined ? exposure : '', ageMonths: ageMonths ?? above }
  })
  const isPlain = ({ exposure, ageMonths }: Condition) => exposure === '' && ageMonths === null
  if (companions.size === 0 && conditions.every(isPlain))
    return { ...base, layout: 'row-per-group', fields, replicates: { columns: names } }
  const blocks = names.map((name, place) => {
    const block: NonNullable<ImportMapping['blocks']>[number] = { [measured]: name }
    for (const [field, of] of companions) block[field] = of[place]!.name
    const { exposure, ageMonths } = conditions[place]!
    if (exposure !== '') block.exposure = { value: exposure }
    if (ageMonths !== null && block.ageMonths === undefined && fields.ageMonths === undefined)
      block.ageMonths = { value: ageMonths }
    return block
  })
  return { ...base, layout: 'blocks', fields, blocks }
}

/** The titles in the row above the headings; where there are none, no cells. */
function cellsAbove(sheet: Sheet, headerRow: number): SheetRow['cells'] {
  return sheet.rows.find(({ row }) => row === headerRow - 1)?.cells ?? []
}

type Several = {
  measured: 'load' | 'strength'
  replicates: Told[]
  /** The columns of other fields that stand beside each of them. */
  companions: Map<ImportField, Told[]>
  taken: ReadonlySet<number>
}

/** The columns that make several blocks of a row; null: a row is one block. */
function replicatesOf(told: readonly Told[], columns: readonly SheetColumn[]): Several | null {
  for (const measured of ['load', 'strength'] as const) {
    const replicates = told.filter(({ field }) => field === measured)
    if (replicates.length < 2) continue
    const companions = new Map<ImportField, Told[]>()
    for (const field of importField.options) {
      const of = told.filter((one) => one.field === field)
      if (field !== measured && of.length === replicates.length) companions.set(field, of)
    }
    const taken = new Set([replicates, ...companions.values()].flat().map(({ column }) => column))
    return { measured, replicates, companions, taken }
  }
  const counted = told.filter(({ field, ordinal, ageMonths }) => field === null && (ordinal ?? ageMonths) !== null)
  const filled = counted.filter(({ column }) => columns[column]!.filled > 0)
  if (filled.length < 2 || told.some(({ field }) => field === 'load' || field === 'strength')) return null
  const isStress = counted.some(({ unit }) => unit === 'MPa' || unit === 'psi')
  return {
    ...{ measured: isStress ? 'strength' : 'load', replicates: counted, companions: new Map() },
    taken: new Set(counted.map(({ column }) => column)),
  }
}

/** Fields that one column of the rest gives; the first that says a field has it. `open`: what the layout itself gives. */
function singleFields(
  sheet: Sheet,
  headerRow: number,
  told: readonly Told[],
  open: { measured: 'load' | 'strength'; unit: HeadingMeaning['unit']; coloured: boolean } | null,
): { fields: ImportMapping['fields'] } {
  const fields: Partial<Record<ImportField, FieldSource>> = {}
  for (const field of importField.options) {
    const one = told.find((each) => each.field === field)
    if (one !== undefined) fields[field] = { column: one.name, ...unitOf(field, one.unit) }
  }
  withDayForms(fields, sheet, headerRow, told)
  if (open !== null) fields[open.measured] = unitOf(open.measured, open.unit)
  const measured = open?.measured ?? (fields.load === undefined ? 'strength' : 'load')
  const coloured = open?.coloured ?? told.find(({ field }) => field === measured)?.coloured ?? false
  if (coloured && fields.woodFailurePercent === undefined)
    fields.woodFailurePercent = { fillOf: measured, fills: {}, noFill: null }
  return { fields }
}

function unitOf(field: ImportField, unit: HeadingMeaning['unit']): { unit?: NonNullable<HeadingMeaning['unit']> } {
  if (unit === null || !Object.hasOwn(unitsOfField, field)) return {}
  return (unitsOfField[field as MeasuredField] as readonly string[]).includes(unit) ? { unit } : {}
}

/** Ways to write a day that another way could be taken for. */
const doubtful = ['D/M/YYYY', 'M/D/YYYY', 'D.M.YYYY', 'M.D.YYYY', 'D-M-YYYY', 'M-D-YYYY']

/** How the days of a column are written, where they fit one way alone; days that fit none say nothing of it. */
function dayForms(sheet: Sheet, headerRow: number, column: number): string[] {
  let forms: string[] | null = null
  for (const { row, cells } of sheet.rows) {
    const cell = row > headerRow ? cells[column] : undefined
    if (cell?.kind !== 'text') continue
    const fitting = doubtful.filter((format) => 'value' in cellDate(cell, format))
    if (fitting.length > 0) forms = forms === null ? fitting : forms.filter((form) => fitting.includes(form))
  }
  return forms ?? []
}

/** How the days of each field are written: as its own column shows beyond doubt, else as those of the other day do. */
function withDayForms(
  fields: Partial<Record<ImportField, FieldSource>>,
  sheet: Sheet,
  headerRow: number,
  told: readonly Told[],
): void {
  const forms = dayFields.map((field) => {
    const one = told.find((each) => each.field === field)
    return { field, forms: one === undefined ? [] : dayForms(sheet, headerRow, one.column) }
  })
  const plain = forms.filter((one) => one.forms.length === 1).map((one) => one.forms[0]!)
  for (const { field, forms: own } of forms) {
    const fitting = own.length < 2 ? own : own.filter((form) => plain.includes(form))
    if (fitting.length === 1) fields[field] = { ...fields[field], dateFormat: fitting[0]! }
  }
}

/** What stands above the headings of replicates: a title reaches to the next one. */
function titlesAbove(
  sheet: Sheet,
  headerRow: number,
  replicates: readonly Told[],
): { exposures: string[] | null; unit: HeadingMeaning['unit'] } {
  const above = cellsAbove(sheet, headerRow)
  let title = ''
  let column = 0
  const exposures = replicates.map((one) => {
    for (; column <= one.column; column++) title = above[column]?.text.trim() || title
    return title
  })
  const unit = exposures.map((text) => headingMeaning(text).unit).find((one) => one !== null) ?? null
  return { exposures: new Set(exposures).size > 1 ? exposures : null, unit }
}
