import type { ImportedRow, ImportedValues } from '#contract/specimens/importedResult.ts'
import type { ImportField, ImportMapping } from '#contract/specimens/importMapping.ts'
import {
  cellFault,
  nothingSaid,
  rowFault,
  spoiltCell,
  spoiltRow,
  storedValueTaken,
} from '#words/specimens/import/rejectedWords.ts'
import { areaQuestion, strengthQuestion } from '#words/specimens/plausibleWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import type { Cell, Sheet, SheetRow } from '../sheets/sheet.ts'
import { foundDecimalSign, type NumberWriting } from './decimalSign.ts'
import { readField } from './fieldReaders.ts'
import { type Place, type Slot, slotsOf } from './slots.ts'
import { summaryRows } from './summaryRows.ts'

/** The blocks of a table, row by row, and how many of its rows hold nothing. */
export type TableRows = { rows: Generator<ImportedRow>; emptyRows: number; writing: NumberWriting }

/**
 * Reads the blocks of a sheet as a mapping says: every block is read or rejected, in the order of rows and columns, and nothing
 * is guessed. Throws Trouble `invalid-input` for a mapping that does not fit the sheet.
 */
export function tableRows(sheet: Sheet, mapping: ImportMapping): TableRows {
  const slots = slotsOf(mapping, sheet)
  const below = sheet.rows.filter(({ row }) => row > mapping.headerRow)
  const writing = writingOf(sheet, mapping, slots, below)
  const summing = summaryRows(below, namingColumns(slots))
  const headings = sheet.rows.find(({ row }) => row === mapping.headerRow)?.cells.length ?? Number.POSITIVE_INFINITY
  const widest = sheet.text === null || mapping.headerRow === 0 ? Number.POSITIVE_INFINITY : headings
  return {
    rows: blocksOf(below, { slots, writing, widest, summing }),
    emptyRows: Math.max(sheet.lastRow - mapping.headerRow, 0) - below.length,
    writing,
  }
}

type Reading = {
  slots: readonly Slot[]
  writing: NumberWriting
  /** How many fields a row may have. */
  widest: number
  /** Rows that sum up others, with the words that say so. */
  summing: ReadonlyMap<number, string>
}

function* blocksOf(rows: readonly SheetRow[], { slots, writing, widest, summing }: Reading): Generator<ImportedRow> {
  for (const { row, cells } of rows) {
    const spoilt = (fault: string): ImportedRow => ({
      ...{ outcome: 'rejected', row, column: null, number: null, reason: spoiltRow(row, null, fault) },
    })
    const sum = summing.get(row)
    if (cells.length > widest || sum !== undefined) {
      yield spoilt(sum === undefined ? rowFault.tooManyFields(cells.length, widest) : rowFault.sumsUp(sum))
      continue
    }
    const filled = slots.filter(({ own }) => own.length === 0 || own.some((column) => !isBlank(cells[column])))
    if (filled.length === 0) yield spoilt(rowFault.noResult)
    for (const slot of filled) yield blockOf(row, cells, slot, writing)
  }
}

const isBlank = (cell: Cell | undefined) =>
  cell === undefined || cell.kind === 'empty' || (cell.text.trim() === '' && cell.kind === 'text')

type Values = Partial<Record<ImportField, number | string>>

function blockOf(row: number, cells: readonly (Cell | undefined)[], slot: Slot, writing: NumberWriting): ImportedRow {
  const values: Values = {}
  const remarks: string[] = []
  let fault: string | null = null
  for (const [field, place] of slot.places) {
    const found = cellAt(place, cells)
    if (found === null) continue
    if ('cell' in found && saysNothing(field, found.cell)) {
      remarks.push(nothingSaid(found.cell.text, field))
      continue
    }
    const spoilt = (what: string) => spoiltCell(row, place.kind === 'value' ? null : place.shown, field, what)
    if ('fault' in found) {
      fault ??= spoilt(found.fault)
      continue
    }
    const read = readField(field, found.cell, {
      ...place,
      // What the mapping itself says is written with a point
      writing: place.kind === 'column' ? writing : { sign: null, lonePoint: true },
    })
    if ('fault' in read) fault ??= spoilt(read.fault)
    else {
      values[field] = read.value
      if (found.cell.formula) remarks.push(storedValueTaken(field))
    }
  }
  const at = { row, column: slot.column }
  const rejected = (reason: string): ImportedRow => ({
    outcome: 'rejected',
    ...at,
    number: values.number === undefined ? null : String(values.number),
    reason,
  })
  if (fault !== null) return rejected(fault)
  const result = resultOf(values)
  return 'fault' in result
    ? rejected(spoiltRow(row, slot.column, result.fault))
    : { outcome: 'read', ...at, values: result, remarks: [...questionsOf(result), ...remarks] }
}

/** A dash or "n/a" where a value may be missing; a result is never passed over so. */
function saysNothing(field: ImportField, { kind, text }: Cell): boolean {
  return kind === 'text' && mayBeMissing.has(field) && /^(?:[-\u2013\u2014]+|n\.?\/?a\.?)$/i.test(text.trim())
}

/** What is asked about sizes and a strength that are hardly ones: a wrong unit shows there. */
function questionsOf({ overlapLengthMm, overlapWidthMm, areaMm2, strengthMPa }: ImportedValues): string[] {
  const { area, strength } = quantitiesIn('SI')
  const sides = { lengthMm: overlapLengthMm, widthMm: overlapWidthMm, areaMm2 }
  return [areaQuestion(sides, area), strengthQuestion(strengthMPa, strength, 'table')].filter((one) => one !== null)
}

/** The cell that a field is read from; null: nothing stands there. */
function cellAt(place: Place, cells: readonly (Cell | undefined)[]): { cell: Cell } | { fault: string } | null {
  if (place.kind === 'value') return { cell: place.cell }
  const cell = cells[place.column]
  if (place.kind === 'column') return isBlank(cell) ? null : { cell: cell! }
  const fill = cell?.fill ?? null
  if (fill === null) return place.noFill === null ? null : { cell: place.noFill }
  const meaning = place.fills.get(fill)
  return meaning === undefined ? { fault: cellFault.strangeFill(fill) } : { cell: meaning }
}

/** Load and strength may differ so much by rounding; more is a contradiction. */
const toleratedShare = 0.05

/** What the fields of a row amount to, or why they give no result. */
function resultOf(values: Values): ImportedValues | { fault: string } {
  const number = (field: ImportField) => (values[field] as number | undefined) ?? null
  const text = (field: ImportField) => (values[field] as string | undefined) ?? ''
  const day = (field: ImportField) => (values[field] as string | undefined) ?? null
  const [length, width] = [number('overlapLength'), number('overlapWidth')]
  const area = number('area') ?? (length === null || width === null ? null : length * width)
  const [load, strength] = [number('load'), number('strength')]
  if (load === null && strength === null) return { fault: rowFault.noResult }
  const fromLoad = load === null || area === null ? null : load / area
  if (fromLoad !== null && strength !== null && Math.abs(fromLoad - strength) > toleratedShare * strength)
    return { fault: rowFault.contradiction(fromLoad, strength) }
  const [gluedOn, brokenOn] = [day('gluedOn'), day('brokenOn')]
  if (gluedOn !== null && brokenOn !== null && brokenOn < gluedOn)
    return { fault: rowFault.ageBackwards(gluedOn, brokenOn) }
  return {
    number: day('number'),
    adhesive: text('adhesive'),
    lot: text('lot'),
    wood: text('wood'),
    jointType: text('jointType'),
    exposure: text('exposure'),
    board: text('board'),
    place: text('place'),
    bondLineGapMm: number('bondLineGap'),
    overlapLengthMm: length,
    overlapWidthMm: width,
    areaMm2: area ?? (load === null || strength === null ? null : load / strength),
    peakN: load ?? (strength === null || area === null ? null : strength * area),
    strengthMPa: fromLoad ?? strength,
    woodFailurePercent: number('woodFailurePercent'),
    failurePattern: (values.failurePattern as ImportedValues['failurePattern'] | undefined) ?? null,
    gluedOn,
    brokenOn,
    ageMonths: number('ageMonths'),
    note: text('note'),
  }
}

const sideFields = ['area', 'overlapLength', 'overlapWidth', 'bondLineGap', 'woodFailurePercent', 'ageMonths'] as const
const numberFields: ReadonlySet<ImportField> = new Set(['load', 'strength', ...sideFields])
const mayBeMissing: ReadonlySet<ImportField> = new Set(['failurePattern', 'gluedOn', 'brokenOn', ...sideFields])

/** The columns that name a block or its adhesive. */
function namingColumns(slots: readonly Slot[]): number[] {
  const columns = slots.flatMap(({ places }) =>
    (['number', 'adhesive'] as const).flatMap((field) => {
      const place = places.get(field)
      return place?.kind === 'column' ? [place.column] : []
    }),
  )
  return [...new Set(columns)]
}

/** How numbers are written: as the mapping says, else as the cells that hold numbers show. */
function writingOf(
  sheet: Sheet,
  mapping: ImportMapping,
  slots: readonly Slot[],
  rows: readonly SheetRow[],
): NumberWriting {
  if (mapping.decimal !== undefined) return { sign: mapping.decimal, lonePoint: true }
  const columns = new Set<number>()
  for (const { places } of slots)
    for (const [field, place] of places)
      if (place.kind === 'column' && numberFields.has(field)) columns.add(place.column)
  const { sign, contradiction } = foundDecimalSign(numberTexts(rows, columns))
  return { sign, lonePoint: !contradiction && sheet.text?.delimiter === ',' }
}

function* numberTexts(rows: readonly SheetRow[], columns: ReadonlySet<number>): Generator<string> {
  for (const { cells } of rows)
    for (const column of columns) {
      const cell = cells[column]
      if (cell?.kind === 'text') yield cell.text
    }
}
