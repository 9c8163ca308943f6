import type { ClimateMapping, TemperatureUnit } from '#contract/findings/climate.ts'
import type { ClimateProposal } from '#contract/findings/climateAnswers.ts'
import { dayOf } from '#domain/programme/calendar/calendarDay.ts'
import { cellDate } from '../import/cellDate.ts'
import { foundDecimalSign } from '../import/decimalSign.ts'
import { type Cell, columnLetters, type SheetRow, textCell } from '../sheets/sheet.ts'
import type { LoggerTable } from './loggerTable.ts'

/** Headings are looked for in so many of the first rows: loggers write about themselves above them. */
const lookedRows = 60
/** No logger writes so many columns; further ones are reached by their letters. */
const mostColumns = 300
/** A mapping names no longer one. */
const longestHeading = 200
const longestDay = 100

const isClock = /\b(?:time|date|timestamp|day|hour)\b|date|time|zeit|datum/i
const isTimeOfDay = /^(?:time|time of day|hour|uhrzeit|zeit)\b/i
const isDay = /\b(?:date|day|datum)\b/i
const isTemperature = /temp|°\s*[cf]\b|^t\b/i
const isHumidity = /humid|feuchte|\br\.?\s?h\b|\br\.?\s?f\b|%\s*r/i
const isDerived = /dew|taupunkt|absolut|frost|heat|wet.?bulb/i

/** Every form in which a day may be proposed. */
const dateForms = [
  ...['YYYY-M-D', 'YYYY/M/D', 'D.M.YYYY', 'D/M/YYYY', 'M/D/YYYY', 'D-M-YYYY', 'M-D-YYYY', 'D MMM YYYY', 'MMM D, YYYY'],
  ...['D.M.YY', 'D/M/YY', 'M/D/YY', 'D-M-YY', 'M-D-YY', 'YY-M-D', 'YY/M/D', 'D-MMM-YY', 'D-MMM-YYYY'],
]

/** What the headings and the first rows say of the columns; what they leave open is null, for a person to say. `headerRow` null: it is looked for. */
export function proposeMapping(
  table: LoggerTable,
  headerRow: number | null,
  earlier: readonly ClimateMapping[],
): ClimateProposal {
  const heading = headerRow === null ? foundHeadings(table.head) : table.head.find(({ row }) => row === headerRow)
  const below = table.head.filter(({ row }) => row > (heading?.row ?? headerRow ?? 0))
  const widest = Math.max(heading?.cells.length ?? 0, ...below.slice(0, 100).map(({ cells }) => cells.length))
  const width = Math.min(widest, mostColumns)
  const columns = Array.from({ length: width }, (_, column) => {
    const written = heading?.cells[column]?.text.trim() ?? ''
    const text = written.length > longestHeading ? '' : written
    return {
      column,
      heading: text,
      cells: below.flatMap(({ cells }) => (cells[column] == null ? [] : [cells[column]])),
    }
  })
  const find = (fits: (heading: string) => boolean) => columns.find((one) => one.heading !== '' && fits(one.heading))
  const clocks = columns.filter((one) => isClock.test(one.heading) && !isTemperature.test(one.heading))
  const time = clocks.find((one) => one.cells.some(holdsDay)) ?? clocks[0]
  const timeOfDay = clocks.find((one) => one !== time && isTimeOfDay.test(one.heading) && isDay.test(time!.heading))
  const temperature = find((text) => isTemperature.test(text) && !isHumidity.test(text) && !isDerived.test(text))
  const humidity = find((text) => isHumidity.test(text) && !isDerived.test(text))
  const forms = time === undefined ? [] : possibleForms(time.cells)
  const nameOf = nameBy(columns.map((one) => one.heading))
  const numbers = [temperature, humidity].flatMap((one) => one?.cells ?? []).filter(({ kind }) => kind === 'text')
  const name = (one: (typeof columns)[number] | undefined) => (one === undefined ? null : nameOf(one.column))
  const names = new Set(columns.map(({ column }) => nameOf(column)))
  return {
    sheets: [...table.sheets],
    sheet: table.sheet,
    headerRow: heading?.row ?? headerRow ?? 0,
    headings: columns.map((one) => ({
      column: nameOf(one.column),
      heading: one.heading,
      example: one.cells[0]?.text.slice(0, 60) ?? '',
    })),
    ...{ time: name(time), timeOfDay: name(timeOfDay), dateFormats: forms.map(({ form }) => form) },
    dateFormat: likeliestForm(forms),
    ...{ temperature: name(temperature), humidity: name(humidity) },
    temperatureUnit: temperature === undefined ? null : unitOf(temperature.heading, temperature.cells),
    decimal: foundDecimalSign(numbers.map(({ text }) => text)).sign,
    kept: earlier.find((one) => columnsOf(one).every((column) => names.has(String(column)))) ?? null,
  }
}

/** The first row that names a clock and a temperature. */
function foundHeadings(head: readonly SheetRow[]): SheetRow | undefined {
  return head.slice(0, lookedRows).find(({ cells }) => {
    const texts = cells.filter((cell) => cell?.kind === 'text').map((cell) => cell!.text)
    return texts.some((text) => isClock.test(text)) && texts.some((text) => isTemperature.test(text))
  })
}

/** A column by its heading where no other has the same, else by its letters. */
function nameBy(headings: readonly string[]): (column: number) => string {
  const lower = headings.map((text) => text.toLowerCase())
  return (column) => {
    const own = lower[column]!
    return own !== '' && lower.indexOf(own) === lower.lastIndexOf(own) ? headings[column]! : columnLetters(column)
  }
}

const columnsOf = ({ time, timeOfDay, temperature, humidity }: ClimateMapping) =>
  [time, timeOfDay, temperature, humidity].flatMap((one) => (one === undefined ? [] : [one.column]))

const dayText = (cell: Cell) =>
  textCell(cell.text.length > longestDay ? '' : cell.text.trim().replace(/(?:T|\s+)\d{1,2}:\d{2}.*$/i, ''))
const holdsDay = (cell: Cell) =>
  cell.kind === 'date' || (cell.kind === 'text' && /\d[./-]\w+[./-]\d|\d \w{3,} \d/.test(cell.text))

/** A form in which most days looked at exist and go one way, and how many days mostly lie between two of them. */
type PossibleForm = { form: string; stepDays: number }

/** Forms in which the days may be written, the likeliest first. Days that a sheet knows as such need none. */
function possibleForms(cells: readonly Cell[]): PossibleForm[] {
  const texts = [...new Set(cells.flatMap((cell) => (cell.kind === 'text' ? [dayText(cell).text] : [])))]
  if (texts.length === 0) return []
  const read = dateForms.map((form) => {
    const days = texts.flatMap((text) => {
      const day = cellDate(textCell(text), form)
      return 'fault' in day ? [] : [dayOf(day.value)]
    })
    const steps = days.slice(1).map((day, i) => day - days[i]!)
    const rising = steps.filter((step) => step > 0).length
    return { form, count: days.length, oneWay: Math.max(rising, steps.length - rising), steps }
  })
  // A few rows may hold a day that does not exist, or stand in the wrong place
  const most = Math.max(...read.map(({ count }) => count))
  const straightest = Math.max(...read.map(({ count, oneWay }) => (count === most ? oneWay : 0)))
  const likely = read.filter(
    ({ count, oneWay }) => count === most && 2 * count > texts.length && oneWay === straightest,
  )
  const withYears = likely.filter(({ form }) => form.includes('YYYY'))
  return (withYears.length > 0 ? withYears : likely)
    .map(({ form, steps }) => ({ form, stepDays: median(steps.map(Math.abs)) }))
    .sort((one, other) => one.stepDays - other.stepDays)
}

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

/** The only form, or the one in which a logger wrote far more often; null: a person has to say it. */
function likeliestForm([first, second]: readonly PossibleForm[]): string | null {
  if (first === undefined) return null
  return second === undefined || 2 * first.stepDays < second.stepDays ? first.form : null
}

function unitOf(heading: string, cells: readonly Cell[]): TemperatureUnit | null {
  const said = [heading, cells[0]?.text.slice(0, longestHeading) ?? '', cells[0]?.unit ?? ''].join(' ')
  const found = (['C', 'F'] as const).filter(
    (unit) =>
      new RegExp(`°\\s*${unit}\\b|[([/,_ ]\\s*${unit}\\s*(?:[)\\]]|$)|deg\\.?\\s*${unit}\\b`, 'i').test(said) ||
      new RegExp(unit === 'C' ? 'celsius' : 'fahrenheit', 'i').test(said),
  )
  return found.length === 1 ? found[0]! : null
}
