// Held by tests/exchange/sheets/readXlsx.spec.ts.
import { Trouble } from '#contract/errors.ts'
import { applyMerges, type Merge, readMerge } from './merges.ts'
import { serialDate, serialSecond } from './serialDate.ts'
import { textCounter, withEscapes } from './sharedStrings.ts'
import { type Cell, columnOfLetters, mostColumns, mostRows, type SheetRow } from './sheet.ts'
import { type CellStyle, noStyle } from './styles.ts'
import { type ElementHandlers, readElements } from './xmlElements.ts'

/** What the cells of a sheet refer to. */
export type Shared = { styles: readonly CellStyle[]; strings: readonly string[]; from1904: boolean }

/** A thousand full columns of ten thousand rows; what holds more is no table of results. */
const mostCells = 10_000_000
const mostMerges = 1_000_000

/** The rows of a sheet that hold something; cells without a value are passed over as they come, so that a million of them cost no memory. */
export async function readWorksheet(
  file: string,
  pieces: AsyncIterable<string>,
  shared: Shared,
  signal: AbortSignal | undefined,
): Promise<{ rows: SheetRow[]; lastRow: number }> {
  const gathered = gatherRows(file, shared)
  await readElements(file, pieces, gathered.handlers, { signal, mostElements: Number.POSITIVE_INFINITY })
  const { rows, lastRow, merges } = gathered.result()
  return { rows: applyMerges(file, rows, merges), lastRow }
}

type OpenCell = { column: number; type: string; style: number; value: string; formula: boolean; stored: boolean }

function gatherRows(file: string, shared: Shared) {
  const rows: SheetRow[] = []
  const merges: Merge[] = []
  let lastRow = 0
  let cellsRead = 0
  const count = textCounter(file)
  let cells: (Cell | undefined)[] = []
  let nextColumn = 0
  let isHidden = false
  let cell: OpenCell | null = null
  let taking = false
  let pronounced = false
  const opened: Readonly<Record<string, (attributes: Readonly<Record<string, string>>) => void>> = {
    row(attributes) {
      const row = attributes.r === undefined ? lastRow + 1 : Number(attributes.r)
      if (!Number.isInteger(row) || row <= lastRow || row > mostRows) throw damaged(file, `row "${attributes.r}"`)
      lastRow = row
      cells = []
      nextColumn = 0
      isHidden = attributes.hidden === '1' || attributes.hidden === 'true'
    },
    c({ r, t = 'n', s = '0' }) {
      const column = r === undefined ? nextColumn : columnOfLetters(/^([A-Z]+)\d*$/i.exec(r)?.[1] ?? '')
      if (column === null || column >= mostColumns) throw damaged(file, `cell "${r}"`)
      nextColumn = column + 1
      cell = { column, type: t, style: Number(s), value: '', formula: false, stored: false }
    },
    f() {
      if (cell !== null) cell.formula = true
    },
    v() {
      taking = cell !== null
    },
    t() {
      taking = cell !== null && !pronounced
    },
    rPh() {
      pronounced = true
    },
    mergeCell({ ref = '' }) {
      const merge = readMerge(ref)
      if (merge !== null && merges.push(merge) > mostMerges) throw tooMany(file, 'a million merged cells')
    },
  }
  const closed: Readonly<Record<string, () => void>> = {
    row() {
      // Without the holes of an array, so that a lone cell far to the right costs nothing
      if (Object.values(cells).some((one) => one?.kind !== 'empty'))
        rows.push({ row: lastRow, cells, ...(isHidden ? { hidden: true } : {}) })
    },
    c() {
      const made = cell === null ? null : cellOf(cell, shared)
      if (made !== null && ++cellsRead > mostCells) throw tooMany(file, 'ten million values')
      if (made !== null) cells[cell!.column] = made
      cell = null
    },
    v: stopTaking,
    t: stopTaking,
    rPh() {
      pronounced = false
    },
  }
  function stopTaking() {
    if (taking && cell !== null) cell.stored = true
    taking = false
  }
  const handlers: ElementHandlers = {
    open(name, attributes) {
      if (Object.hasOwn(opened, name)) opened[name]!(attributes)
    },
    close(name) {
      if (Object.hasOwn(closed, name)) closed[name]!()
    },
    text(text) {
      if (!taking || cell === null) return
      count(text.length)
      cell.value += text
    },
  }
  return { handlers, result: () => ({ rows, lastRow, merges }) }
}

/** The cell as it will be read; null: it holds nothing. */
function cellOf(open: OpenCell, { styles, strings, from1904 }: Shared): Cell | null {
  const { format, fill } = styles[open.style] ?? noStyle
  const { formula, value } = open
  const cell = (kind: Cell['kind'], text: string): Cell => ({ kind, text, number: null, unit: '', formula, fill })
  if (!open.stored || (value === '' && open.type !== 'str')) {
    if (formula) return cell('unstored', '')
    return fill === null ? null : cell('empty', '')
  }
  if (open.type === 's') return textOrNothing(cell, strings[Number(value)] ?? '')
  if (open.type === 'inlineStr' || open.type === 'str') return textOrNothing(cell, withEscapes(value))
  if (open.type === 'e') return cell('error', value)
  if (open.type === 'b') return cell('truth', value === '1' ? 'TRUE' : 'FALSE')
  if (open.type === 'd') return isoCell(cell, value)
  const number = Number(value)
  if (!Number.isFinite(number)) return cell('error', value)
  if (format.shows === 'date') return withSecond(cell('date', serialDate(number, from1904) ?? ''), serialSecond(number))
  if (format.shows === 'time') return cell('time', value)
  if (format.unit === '%') {
    // As it shows: 0.07 times 100 is 7, not 7.000000000000001
    const percent = Number((number * 100).toPrecision(15))
    return { kind: 'number', text: `${percent} %`, number: percent, unit: '%', formula, fill }
  }
  return { kind: 'number', text: shown(number, format.digits), number, unit: format.unit, formula, fill }
}

function isoCell(cell: (kind: 'date', text: string) => Cell, value: string): Cell {
  const [, day = '', hour = 0, minute = 0, second = 0] =
    /^(\d{4}-\d\d-\d\d)(?:T(\d\d):(\d\d)(?::(\d\d))?)?/.exec(value) ?? []
  return withSecond(cell('date', day), Number(hour) * 3600 + Number(minute) * 60 + Number(second))
}

function withSecond(cell: Cell, secondOfDay: number): Cell {
  return secondOfDay === 0 ? cell : { ...cell, secondOfDay }
}

function textOrNothing(cell: (kind: 'text' | 'empty', text: string) => Cell, text: string): Cell | null {
  if (text.trim() !== '') return cell('text', text)
  const empty = cell('empty', '')
  return empty.fill === null ? null : empty
}

/** A number with the leading zeros that its format writes before it. */
function shown(number: number, digits: number): string {
  return digits > 0 && Number.isInteger(number) && number >= 0 ? String(number).padStart(digits, '0') : String(number)
}

const damaged = (file: string, what: string) =>
  new Trouble(
    'not-readable',
    `${file}: ${what.slice(0, 60)} of the sheet stands where none can be.`,
    'Open the file in a sheet program, save it again, and read that.',
  )

const tooMany = (file: string, what: string) =>
  new Trouble(
    'not-readable',
    `${file}: the sheet holds more than ${what}.`,
    'Copy the columns that are wanted into a new sheet.',
  )
