import { Trouble } from '#contract/errors.ts'
import type { ClimateMapping } from '#contract/findings/climate.ts'
import { loggerTimes } from '#domain/climate/loggerTimes.ts'
import { type ZoneClock, zoneClock } from '#domain/climate/zoneClock.ts'
import { growingColumn } from '#domain/numbers/growingColumn.ts'
import { type LoggerField, loggerFault, loggerFields, timeFaultWords } from '#words/findings/climate/loggerWords.ts'
import { spoiltRow } from '#words/specimens/import/rejectedWords.ts'
import type { Read } from '../import/cellNumber.ts'
import { foundDecimalSign, type NumberWriting } from '../import/decimalSign.ts'
import { columnFinder } from '../import/slots.ts'
import { type Cell, columnLetters } from '../sheets/sheet.ts'
import { timeReader } from './cellTime.ts'
import { loggerHumidity, loggerTemperature } from './loggerNumber.ts'
import { type LoggerTable, openLogger } from './loggerTable.ts'

/** Readings of a file in the order of their times; temperatures in the unit of the mapping, NaN: no humidity. */
export type LoggerReadings = {
  readonly row: Float64Array<ArrayBuffer>
  readonly timeS: Float64Array<ArrayBuffer>
  readonly temperature: Float64Array<ArrayBuffer>
  readonly humidityPercent: Float64Array<ArrayBuffer>
}

export type LoggerFile = {
  readonly readings: LoggerReadings
  /** As many of the rows that gave none as are named, in their order, and how many there are. */
  readonly rejected: readonly { row: number; reason: string }[]
  readonly rejectedCount: number
  readonly newestFirst: boolean
}

/** Ten years at one reading a minute, and some more. */
export const mostReadings = 6_000_000
/** The whole file lies in memory while it is read. */
const mostBytes = 200_000_000
/** So many rejected rows are kept with their sentences. */
const mostNamed = 1000

/**
 * Reads every row of a logger's file as a mapping says: each is a reading, or rejected with its reason in a sentence, and nothing
 * is guessed. Rejects with a Trouble where the file cannot be read or the mapping does not fit it.
 */
export async function readLogger(
  file: string,
  bytes: Buffer,
  mapping: ClimateMapping,
  nowS: number,
  onProgress: (done: number, total: number) => void,
  signal?: AbortSignal,
): Promise<LoggerFile> {
  if (bytes.length > mostBytes) throw tooLarge(file, 'is larger than 200 MB')
  const clock = clockOf(mapping)
  const table = await openLogger(file, bytes, mapping, signal)
  const taken = rowTaker(table, mapping)
  await table.each((row, cellAt) => {
    taken.take(row, cellAt)
    if (taken.columns.row.length() > mostReadings) throw tooLarge(file, 'holds more than six million readings')
  }, onProgress)
  return inOrder(taken, clock, nowS)
}

const tooLarge = (file: string, what: string) =>
  new Trouble('not-readable', `${file}: it ${what}.`, 'Divide it into several, and bring in one after the other.')

/** Throws Trouble `invalid-input` where a mapping names a zone that nobody knows. */
function clockOf({ timeZone }: ClimateMapping): ZoneClock {
  const clock = zoneClock(timeZone)
  if (clock !== null) return clock
  throw new Trouble(
    'invalid-input',
    `"${timeZone}" is no time zone.`,
    'Write UTC, an offset as +01:00, or a name as Europe/Lisbon.',
  )
}

type Columns = Record<'row' | 'shownS' | 'aheadS' | 'temperature' | 'humidityPercent', ReturnType<typeof growingColumn>>
type Taken = {
  take(row: number, cellAt: (column: number) => Cell | null): void
  columns: Columns
  rejected: { row: number; reason: string }[]
  rejectedCount(): number
}

/** Takes rows as they come; a row is rejected with the first fault that it has. */
function rowTaker(table: LoggerTable, mapping: ClimateMapping): Taken {
  const find = columnFinder(mapping, { rows: table.head })
  const place = (named: { column: string | number } | undefined) => {
    if (named === undefined) return null
    const column = find(named.column)
    const letters = columnLetters(column)
    return { column, shown: letters === String(named.column) ? letters : `${letters} (${named.column})` }
  }
  const [time, timeOfDay, temperature, humidity] = [
    place(mapping.time)!,
    place(mapping.timeOfDay),
    place(mapping.temperature)!,
    place(mapping.humidity),
  ]
  const writing = writingOf(table, mapping, [temperature.column, ...(humidity === null ? [] : [humidity.column])])
  const readTime = timeReader(mapping.time.dateFormat ?? null)
  const columns: Columns = {
    row: growingColumn(),
    shownS: growingColumn(),
    aheadS: growingColumn(),
    temperature: growingColumn(),
    humidityPercent: growingColumn(),
  }
  const rejected: Taken['rejected'] = []
  let rejectedCount = 0
  return {
    columns,
    rejected,
    rejectedCount: () => rejectedCount,
    take(row, cellAt) {
      let isSpoilt = false
      const from = <Value>(
        at: { column: number; shown: string } | null,
        field: LoggerField,
        read: (cell: Cell) => Read<Value>,
      ): Value | null => {
        if (isSpoilt || at === null) return null
        const cell = cellAt(at.column)
        if (cell === null && field === 'humidity') return null
        const value = cell === null ? { fault: loggerFault.empty } : read(cell)
        if ('value' in value) return value.value
        isSpoilt = true
        rejectedCount += 1
        if (rejected.length < mostNamed)
          rejected.push({ row, reason: spoiltRow(row, at.shown, `${loggerFields[field]}: ${value.fault}`) })
        return null
      }
      const ofDay = from(timeOfDay, 'timeOfDay', (cell) => ({ value: cell }))
      const shown = from(time, 'time', (cell) => readTime(cell, ofDay))
      const degrees = from(temperature, 'temperature', (cell) =>
        loggerTemperature(cell, mapping.temperature.unit, writing),
      )
      const percent = from(humidity, 'humidity', (cell) => loggerHumidity(cell, writing))
      if (isSpoilt) return
      columns.row.push(row)
      columns.shownS.push(shown!.shownS)
      columns.aheadS.push(shown!.aheadS)
      columns.temperature.push(degrees!)
      columns.humidityPercent.push(percent ?? Number.NaN)
    },
  }
}

/** How numbers are written: as the mapping says, else as the first rows show. */
function writingOf(table: LoggerTable, mapping: ClimateMapping, columns: readonly number[]): NumberWriting {
  if (mapping.decimal !== undefined) return { sign: mapping.decimal, lonePoint: true }
  const texts = table.head
    .filter(({ row }) => row > mapping.headerRow)
    .flatMap(({ cells }) => columns.flatMap((column) => (cells[column]?.kind === 'text' ? [cells[column].text] : [])))
  const { sign, contradiction } = foundDecimalSign(texts)
  // Fields that a comma parts can have no comma in their numbers
  if (sign === null && !contradiction && table.delimiter === ',') return { sign: '.', lonePoint: true }
  return { sign, lonePoint: false }
}

function inOrder({ columns, rejected, rejectedCount }: Taken, clock: ZoneClock, nowS: number): LoggerFile {
  const row = columns.row.view()
  const { timeS, faults, newestFirst } = loggerTimes(columns.shownS.view(), columns.aheadS.view(), clock, nowS)
  const named = [...rejected]
  for (const [place, { fault, other }] of faults) {
    if (named.length >= 2 * mostNamed) break
    const reason = timeFaultWords[fault](other === null ? null : row[other]!)
    named.push({ row: row[place]!, reason: spoiltRow(row[place]!, null, reason) })
  }
  const picked = (values: Float64Array) => {
    const kept = values.filter((_, place) => !Number.isNaN(timeS[place]!)) as Float64Array<ArrayBuffer>
    return newestFirst ? kept.reverse() : kept
  }
  return {
    readings: {
      row: picked(row),
      timeS: picked(timeS),
      temperature: picked(columns.temperature.view()),
      humidityPercent: picked(columns.humidityPercent.view()),
    },
    rejected: named.sort((one, other) => one.row - other.row).slice(0, mostNamed),
    rejectedCount: rejectedCount() + faults.size,
    newestFirst,
  }
}
