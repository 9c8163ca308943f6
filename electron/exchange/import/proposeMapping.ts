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
import { type HeadingMeaning, headingMeaning } from './headingMeaning.ts'

/** A column with what its heading says of it. */
type Told = HeadingMeaning & { column: number; name: ColumnName; coloured: boolean }

/** Proposes how a sheet becomes blocks, from its headings; the person has the last word. */
export function proposeMapping(sheet: Sheet, headerRow: number, columns: readonly SheetColumn[]): ImportMapping {
  const told = columns.map(
    ({ heading, name, fills }, column): Told => ({
      ...headingMeaning(heading),
      ...{ column, name, coloured: fills.some(({ fill }) => fill !== null) },
    }),
  )
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
  const exposures = restarts && fields.exposure === undefined ? titles.exposures : null
  if (companions.size === 0 && exposures === null)
    return { ...base, layout: 'row-per-group', fields, replicates: { columns: names } }
  const blocks = names.map((name, place) => {
    const block: NonNullable<ImportMapping['blocks']>[number] = { [measured]: name }
    for (const [field, of] of companions) block[field] = of[place]!.name
    const exposure = exposures?.[place] ?? ''
    if (exposure !== '') block.exposure = { value: exposure }
    return block
  })
  return { ...base, layout: 'blocks', fields, blocks }
}

/** What a block may say of itself beside its load, where blocks stand side by side. */
const ofOneBlock: readonly ImportField[] = [
  'load',
  'strength',
  'woodFailurePercent',
  'failurePattern',
  'note',
  'number',
  'brokenOn',
  'board',
]

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
    for (const field of ofOneBlock) {
      const of = told.filter((one) => one.field === field)
      if (field !== measured && of.length === replicates.length) companions.set(field, of)
    }
    const taken = new Set([replicates, ...companions.values()].flat().map(({ column }) => column))
    return { measured, replicates, companions, taken }
  }
  const counted = told.filter(({ field, ordinal }) => field === null && ordinal !== null)
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
    if (one !== undefined)
      fields[field] = { column: one.name, ...unitOf(field, one.unit), ...dayForm(sheet, headerRow, field, one) }
  }
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

/** How the days of a column are written, where all of them fit one way alone. */
function dayForm(sheet: Sheet, headerRow: number, field: ImportField, { column }: Told): { dateFormat?: string } {
  if (!(dayFields as readonly string[]).includes(field)) return {}
  const days = sheet.rows.flatMap(({ row, cells }) => {
    const cell = row > headerRow ? cells[column] : undefined
    return cell?.kind === 'text' ? [cell] : []
  })
  const fitting = doubtful.filter((format) => days.every((day) => 'value' in cellDate(day, format)))
  return days.length > 0 && fitting.length === 1 ? { dateFormat: fitting[0]! } : {}
}

/** What stands above the headings of replicates: a title reaches to the next one. */
function titlesAbove(
  sheet: Sheet,
  headerRow: number,
  replicates: readonly Told[],
): { exposures: string[] | null; unit: HeadingMeaning['unit'] } {
  const above: SheetRow['cells'] = sheet.rows.find(({ row }) => row === headerRow - 1)?.cells ?? []
  let title = ''
  let column = 0
  const exposures = replicates.map((one) => {
    for (; column <= one.column; column++) title = above[column]?.text.trim() || title
    return title
  })
  const unit = exposures.map((text) => headingMeaning(text).unit).find((one) => one !== null) ?? null
  return { exposures: new Set(exposures).size > 1 ? exposures : null, unit }
}
