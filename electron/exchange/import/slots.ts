// Held by tests/exchange/import/readRows.spec.ts.
import { Trouble } from '#contract/errors.ts'
import {
  type ColumnName,
  type FieldSource,
  fillCode,
  type ImportField,
  type ImportMapping,
  importField,
} from '#contract/specimens/importMapping.ts'
import { fieldWords } from '#words/specimens/import/rejectedWords.ts'
import { type Cell, columnLetters, columnOfLetters, type Sheet } from '../sheets/sheet.ts'

/** Where a field of a block comes from, with columns found. `shown`: how the column is called in a sentence. */
export type Place = { readonly unit: string | null; readonly dateFormat: string | null } & (
  | { readonly kind: 'column'; readonly column: number; readonly shown: string }
  | { readonly kind: 'value'; readonly cell: Cell }
  | {
      readonly kind: 'fill'
      readonly column: number
      readonly shown: string
      readonly fills: ReadonlyMap<string, Cell>
      readonly noFill: Cell | null
    }
)

/**
 * What a row holds once: the only block of it, or one of several. `column` is its heading as in the mapping, null where a row is
 * one block; `own` are the columns that are its alone.
 */
export type Slot = {
  readonly column: string | null
  readonly own: readonly number[]
  readonly places: ReadonlyMap<ImportField, Place>
}

/** The blocks that a row may hold, by the mapping and the headings. Throws Trouble `invalid-input` for a mapping that does not fit the sheet. */
export function slotsOf(mapping: ImportMapping, sheet: Sheet): Slot[] {
  const columns = columnFinder(mapping, sheet)
  if (mapping.layout === 'blocks')
    return mapping.blocks!.map((block) => {
      const sources: Sources = { ...mapping.fields }
      const named: ColumnName[] = []
      for (const [field, given] of Object.entries(block) as [ImportField, ColumnName | FieldSource][]) {
        const source = typeof given === 'object' ? given : { column: given }
        sources[field] = { ...mapping.fields[field], ...source }
        if (source.column !== undefined) named.push(source.column)
      }
      const first = ['load', 'strength']
        .map((field) => sources[field as ImportField]?.column)
        .find((one) => one !== undefined)
      const label = named.find((one) => one === first) ?? named[0]
      if (label === undefined) throw unfit('A block of the mapping names no column.')
      return { column: String(label), own: named.map(columns), places: placesOf(sources, columns) }
    })
  const open = Object.entries(mapping.fields).filter(([, source]) => source !== undefined && isOpen(source))
  if (mapping.layout === 'row-per-specimen') {
    if (open.length > 0)
      throw unfit(`The mapping does not say where the ${fieldWords[open[0]![0] as ImportField]} stands.`)
    return [{ column: null, own: [], places: placesOf(mapping.fields, columns) }]
  }
  const [measured] = open
  if (open.length !== 1 || (measured![0] !== 'load' && measured![0] !== 'strength'))
    throw unfit('With replicates across, either the load or the strength is the one field without a column.')
  if (mapping.fields.number?.column !== undefined)
    throw unfit(
      'A number names one block, and a row of this layout holds several; leave the number out of the mapping.',
    )
  return mapping.replicates!.columns.map((column) => {
    const sources = { ...mapping.fields, [measured![0]]: { ...measured![1], column } }
    return { column: String(column), own: [columns(column)], places: placesOf(sources, columns) }
  })
}

type Sources = Partial<Record<ImportField, FieldSource | undefined>>

const isOpen = ({ column, value, fillOf }: FieldSource) =>
  column === undefined && value === undefined && fillOf === undefined

function placesOf(sources: Sources, columns: (name: ColumnName) => number): Map<ImportField, Place> {
  const places = new Map<ImportField, Place>()
  for (const field of importField.options) {
    const source = sources[field]
    // In blocks, a field may say no more than the unit of those that have a column
    if (source === undefined || isOpen(source)) continue
    const shared = { unit: source.unit ?? null, dateFormat: source.dateFormat ?? null }
    if (source.column !== undefined) {
      const column = columns(source.column)
      places.set(field, { ...shared, kind: 'column', column, shown: shownColumn(column, source.column) })
    } else if (source.value !== undefined)
      places.set(field, { ...shared, kind: 'value', cell: givenCell(source.value) })
    else {
      const of = sources[source.fillOf!]?.column
      if (of === undefined)
        throw unfit(`The colour of the ${fieldWords[source.fillOf!]} is asked for, and it has no column.`)
      places.set(field, {
        ...shared,
        kind: 'fill',
        column: columns(of),
        shown: shownColumn(columns(of), of),
        fills: new Map(Object.entries(source.fills!).map(([code, value]) => [fillCode(code), givenCell(value)])),
        noFill: source.noFill == null ? null : givenCell(source.noFill),
      })
    }
  }
  return places
}

function shownColumn(column: number, name: ColumnName): string {
  const letters = columnLetters(column)
  return String(name) === letters ? letters : `${letters} (${name})`
}

/** A value of the mapping as if it stood in a cell. */
function givenCell(value: string | number): Cell {
  const number = typeof value === 'number' ? value : null
  return {
    kind: number === null ? 'text' : 'number',
    text: String(value),
    number,
    unit: '',
    formula: false,
    fill: null,
  }
}

/** Finds the column of a name: a heading; else letters over a column; without headings, or as a number, also its number from 1. */
export function columnFinder(
  { headerRow }: Pick<ImportMapping, 'headerRow'>,
  sheet: Pick<Sheet, 'rows'>,
): (name: ColumnName) => number {
  const cells = sheet.rows.find(({ row }) => row === headerRow)?.cells ?? []
  if (headerRow > 0 && cells.length === 0)
    throw unfit(`Row ${headerRow} should hold the headings, and nothing stands in it.`)
  const headings = Array.from(cells, (cell) => plainHeading(cell?.text ?? ''))
  const placesWhere = (fits: (heading: string) => boolean) =>
    headings.flatMap((heading, column) => (fits(heading) ? [column] : []))
  return (name) => {
    const wanted = plainHeading(String(name))
    const exact = placesWhere((heading) => heading === wanted)
    const places = exact.length > 0 ? exact : placesWhere((heading) => heading.toLowerCase() === wanted.toLowerCase())
    if (places.length === 1) return places[0]!
    if (places.length > 1)
      throw unfit(
        `More than one column is headed “${name}”: ${places.map(columnLetters).join(', ')}. Name the letters of the one you mean.`,
      )
    const byNumber = typeof name === 'number' || headerRow === 0 ? Number(name) : Number.NaN
    const column = columnOfLetters(String(name)) ?? (Number.isInteger(byNumber) && byNumber > 0 ? byNumber - 1 : null)
    if (column === null)
      throw unfit(
        headerRow === 0
          ? `“${name}” is no column: without headings, columns go by letters, or by numbers from 1.`
          : `No column is headed “${name}”. The headings in row ${headerRow} are: ${headingsShown(cells)}.`,
      )
    return column
  }
}

function plainHeading(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim()
}

function headingsShown(cells: readonly (Cell | undefined)[]): string {
  const texts = cells.flatMap((cell) => (cell === undefined || cell.text.trim() === '' ? [] : [cell.text.trim()]))
  return texts.slice(0, 30).join(', ')
}

const unfit = (message: string) => new Trouble('invalid-input', message, 'Correct the mapping, and try again.')
