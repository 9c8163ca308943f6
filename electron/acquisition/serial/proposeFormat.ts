import type { Listening } from '#contract/bench/bench.ts'
import type { ColumnName, LineFormatChoice } from '#contract/bench/source.ts'
import { createLineParser } from '../lineFormats/lineParser.ts'
import { createReadingBatch } from '../readingBatch.ts'

export const commonBaudRates = [115_200, 57_600, 38_400, 19_200, 9600, 230_400, 921_600] as const

/** What to do when not one byte comes. */
export const silenceAdvice =
  'Check that the amplifier has power and sends by itself, that receive and transmit are not swapped, and that this is its port.'

const shownLines = 20
const longestShown = 120
const mostColumns = 12
/** A format is proposed when at least this share of the lines fits it. */
const enoughFit = 0.7
/** Text with less than this share of printable bytes was most likely heard at the wrong rate. */
const enoughText = 0.9
/** A column counts as rising when this share of its steps goes up: counters wrap, lines get lost. */
const mostlyRising = 0.95

function isText(byte: number): boolean {
  return (byte >= 32 && byte <= 126) || byte === 9 || byte === 10 || byte === 13
}

/** For people: what cannot be printed becomes a middle dot. */
function shown(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes.subarray(0, longestShown))
    text += byte >= 32 && byte <= 126 ? String.fromCharCode(byte) : '·'
  return text
}

/** Whole lines without their ends; what stands before the first and after the last line end may be cut and is left out. */
function wholeLines(bytes: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = []
  let start = bytes.indexOf(10) + 1
  if (start === 0) return lines
  for (let end = bytes.indexOf(10, start); end >= 0; end = bytes.indexOf(10, start)) {
    const to = end > start && bytes[end - 1] === 13 ? end - 1 : end
    if (to > start) lines.push(bytes.subarray(start, to))
    start = end + 1
  }
  return lines
}

function fitOf(choice: LineFormatChoice, bytes: Uint8Array): { fit: number; unit: string | null } {
  const batch = createReadingBatch()
  let readings = 0
  let rejected = 0
  const parser = createLineParser(choice, batch, () => rejected++)
  for (let from = 0; from < bytes.length; ) {
    from += parser.push(bytes.subarray(from))
    readings += batch.count
    batch.clear()
  }
  const lines = readings + rejected
  return { fit: lines === 0 ? 0 : readings / lines, unit: parser.unit() }
}

function most<T>(values: readonly T[]): T | null {
  const counts = new Map<T, number>()
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null
}

/** What a rising column is, judged by how fast it rises: microseconds, milliseconds and seconds rise by 10^6, 10^3 and 1 a second. */
function risingColumn(values: readonly number[], linesPerSecond: number): ColumnName | null {
  const steps = values.slice(1).map((value, i) => value - values[i]!)
  const up = steps.filter((step) => step > 0)
  if (steps.length < 3 || up.length < mostlyRising * steps.length) return null
  const typical = [...up].sort((a, b) => a - b)[Math.floor(up.length / 2)]!
  const perSecond = typical * linesPerSecond
  for (const [name, rate] of [
    ['time_us', 1e6],
    ['time_ms', 1e3],
    ['time_s', 1],
  ] as const)
    if (perSecond > rate / 1.5 && perSecond < rate * 1.5) return name
  if (up.filter((step) => step === 1).length >= mostlyRising * steps.length) return 'seq'
  return '-'
}

/** Names the columns of delimited lines; null when no column can be the reading. */
function guessColumns(lines: readonly Uint8Array[], linesPerSecond: number): ColumnName[] | null {
  const split = lines.map((line) =>
    String.fromCharCode(...line)
      .trim()
      .split(/\s*[,;]\s*|\s+/),
  )
  const width = most(split.map((fields) => fields.length))
  if (width === null || width < 2 || width > mostColumns) return null
  const rows = split.filter((fields) => fields.length === width)
  const columns: ColumnName[] = []
  const candidates: { place: number; changes: boolean }[] = []
  for (let place = 0; place < width; place++) {
    const values = rows
      .map((fields) => (fields[place] === '' ? Number.NaN : Number(fields[place])))
      .filter(Number.isFinite)
    const numeric = values.length >= enoughFit * rows.length
    const rising = numeric ? risingColumn(values, linesPerSecond) : null
    const taken = rising === 'seq' ? columns.includes('seq') : columns.some((name) => name.startsWith('time'))
    columns.push(rising === null || taken ? '-' : rising)
    if (numeric && rising === null) candidates.push({ place, changes: new Set(values).size > 1 })
  }
  const reading = candidates.find(({ changes }) => changes) ?? candidates[0]
  if (reading === undefined) return null
  columns[reading.place] = 'counts'
  return columns
}

function adviceFor(choice: LineFormatChoice, unit: string | null): string {
  const look = 'Press on the load cell with a finger: the value must follow.'
  if (choice.name === 'checked')
    return `These are lines with sequence, time and a check value: lost lines will be noticed, damaged ones mostly. ${look}`
  if (choice.name === 'crc')
    return `These are lines with sequence, time and a CRC: lost and damaged lines will be noticed. ${look}`
  if (choice.name === 'columns')
    return `These are columns: ${choice.columns.join(', ')}. Check that the right one is the reading. ${look}`
  return unit === null || unit === 'counts'
    ? `These are plain numbers without a unit, taken as converter counts. ${look}`
    : `These are numbers in ${unit}, as the amplifier claims. ${look}`
}

function wrongRateAdvice(baudRate: number | null): string {
  const others = commonBaudRates.filter((rate) => rate !== baudRate).slice(0, 5)
  const at = baudRate === null ? '' : ` at ${baudRate} baud`
  return `Most of what arrived${at} is not text: the baud rate is probably wrong. Try ${others.join(', ')}, or look it up in the firmware or manual of the amplifier.`
}

/**
 * Judges bytes heard during so many seconds: which line format they most likely are in, and what to do when none fits.
 * Every candidate is tried with the parser that would be used; among equals `number` goes before `columns`; no line is
 * both of a checked format and of another.
 */
export function proposeFormat(bytes: Uint8Array, seconds: number, baudRate: number | null = null): Listening {
  const lines = wholeLines(bytes)
  const linesPerSecond = lines.length === 0 || !(seconds > 0) ? null : lines.length / seconds
  const heard = { lines: lines.slice(-shownLines).map(shown), bytes: bytes.length, linesPerSecond }
  const none = (advice: string): Listening => ({ ...heard, proposal: null, fit: 0, advice })
  if (bytes.length === 0) return none(`Nothing arrived. ${silenceAdvice}`)
  let text = 0
  for (const byte of bytes) if (isText(byte)) text += 1
  if (text < enoughText * bytes.length) {
    if (heard.lines.length === 0) heard.lines.push(shown(bytes))
    return none(wrongRateAdvice(baudRate))
  }
  if (lines.length === 0)
    return none(
      'Text arrived, but no whole line. Listen longer; if it stays so, the amplifier does not end its lines with a line feed.',
    )

  const columns = guessColumns(lines, linesPerSecond ?? 0)
  const candidates: LineFormatChoice[] = [
    { name: 'crc', columns: [] },
    { name: 'checked', columns: [] },
    { name: 'number', columns: [] },
    ...(columns === null ? [] : [{ name: 'columns' as const, columns }]),
  ]
  const tried = candidates.map((choice) => ({ choice, ...fitOf(choice, bytes) }))
  const best = tried.reduce((a, b) => (b.fit > a.fit ? b : a))
  if (best.fit < enoughFit)
    return {
      ...none(
        'Lines arrive, but they fit no format. See firmware-notes for what may be sent; for an amplifier that mixes words and values, name its columns by hand.',
      ),
      fit: best.fit,
    }
  return { ...heard, proposal: best.choice, fit: best.fit, advice: adviceFor(best.choice, best.unit) }
}
