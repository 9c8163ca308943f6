import type { LineFormatChoice } from '#contract/bench/source.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { ReadingBatch } from '../readingBatch.ts'
import { createCheckedDecoder } from './checkedLine.ts'
import { createColumnsDecoder } from './columnsLine.ts'
import { lineChecks } from './lineCheck.ts'
import { carriageReturn, type LineDecoder, lineFeed } from './lineDecoder.ts'
import { createNumberDecoder } from './numberLine.ts'

export type LineParser = {
  /**
   * Takes the next bytes of the stream, cut anywhere, and adds their readings to the batch. Returns how many bytes were taken:
   * fewer than there are where the unit changes while readings of the old one are in the batch. The rest is then for the next
   * call, once the batch is empty.
   */
  push(chunk: Uint8Array): number
  /**
   * The unit of the readings; null before the first. A line with another unit is rejected, until so many follow each other
   * that the device must have changed it: from then on the other is the unit.
   */
  unit(): ReadingUnit | null
  /** Device times start again at 0 after this; null: never, or there are none. */
  readonly timeWrapsAtUs: number | null
  /** The stream was cut (device lost and found): forgets the half line and the unit; the next line may lack its start. */
  restart(): void
}

export const longestLine = 256
/** With so many lines of another unit in a row it is the unit. Common practice, no source. */
const linesOfAnotherUnit = 3

const counterEnd = 2 ** 32

function decoderOf(choice: LineFormatChoice): LineDecoder {
  if (choice.name === 'number') return createNumberDecoder()
  if (choice.name === 'columns') return createColumnsDecoder(choice.columns)
  return createCheckedDecoder(lineChecks[choice.name])
}

function wrapOf(choice: LineFormatChoice): number | null {
  if (choice.name === 'number') return null
  if (choice.name !== 'columns') return counterEnd
  if (choice.columns.includes('time_us')) return counterEnd
  return choice.columns.includes('time_ms') ? counterEnd * 1000 : null
}

/**
 * Splits a byte stream into lines (LF or CRLF) and takes each apart by the decoder of its format, without making a string
 * of any. Bytes are kept only of a line that is cut or rejected. An empty line is nothing; a line over `longestLine` bytes is one rejected line. The first line after opening
 * may lack its beginning and still look like a number, so it is left out, unless `startsAtLine` says that the stream
 * begins with a whole line. `rejected` gets a line that is no reading, without its line end, at most `longestLine` bytes;
 * the bytes are the receiver's to keep.
 */
export function createLineParser(
  choice: LineFormatChoice,
  batch: ReadingBatch,
  rejected: (line: Uint8Array) => void,
  options: { startsAtLine?: boolean } = {},
): LineParser {
  const decoder = decoderOf(choice)
  // Two more than a line may have, for the carriage return and the line feed that end it.
  const kept = new Uint8Array(longestLine + 2)
  let keptLength = 0
  let tooLong = false
  let unit: ReadingUnit | null = null
  let other: ReadingUnit | null = null
  let ofOther = 0
  let stopped = false
  let skipping = !(options.startsAtLine ?? false)

  function push(chunk: Uint8Array): number {
    const { length } = chunk
    stopped = false
    let end = length
    while (end > 0 && chunk[end - 1] !== lineFeed) end -= 1
    let start = 0
    if (keptLength > 0 && end > 0) {
      start = lineFeedFrom(chunk, 0) + 1
      keep(chunk, 0, start - 1)
      kept[keptLength] = lineFeed
      takeLine(kept, 0)
      keptLength = 0
      tooLong = false
    }
    while (start < end) {
      const next = takeLine(chunk, start) + 1
      if (stopped) return start
      start = next
    }
    keep(chunk, start, length)
    return length
  }

  function keep(chunk: Uint8Array, from: number, to: number): void {
    const room = longestLine + 1 - keptLength
    if (to - from > room) tooLong = true
    const end = Math.min(to, from + room)
    for (let i = from; i < end; i++) kept[keptLength++] = chunk[i]!
  }

  /** Takes the line that begins at `from`, unless it must wait; returns where it ends. */
  function takeLine(bytes: Uint8Array, from: number): number {
    if (!skipping && !tooLong) {
      const lineEnd = decoder.decode(bytes, from)
      if (lineEnd >= 0 && isReading(bytes, from, lineEnd)) {
        batch.add(decoder.value, decoder.deviceTimeUs, decoder.sequence)
        return lineEnd
      }
    }
    const lineEnd = lineFeedFrom(bytes, from)
    if (stopped) return lineEnd
    const to = contentEnd(bytes, from, lineEnd)
    if (!skipping && to > from) rejected(bytes.slice(from, Math.min(to, from + longestLine)))
    skipping = false
    return lineEnd
  }

  function isReading(bytes: Uint8Array, from: number, lineEnd: number): boolean {
    if (lineEnd - from > longestLine && contentEnd(bytes, from, lineEnd) - from > longestLine) return false
    if (unit === null) unit = decoder.unit
    if (unit !== decoder.unit) return changesUnit()
    ofOther = 0
    return true
  }

  /** Whether the line is the one with which the unit changes. It waits while readings of the old unit are in the batch. */
  function changesUnit(): boolean {
    const inARow = decoder.unit === other ? ofOther + 1 : 1
    stopped = inARow >= linesOfAnotherUnit && batch.count > 0
    if (stopped) return false
    other = decoder.unit
    ofOther = inARow
    if (ofOther < linesOfAnotherUnit) return false
    unit = other
    ofOther = 0
    return true
  }

  return {
    push,
    unit: () => unit,
    timeWrapsAtUs: wrapOf(choice),
    restart() {
      keptLength = 0
      tooLong = false
      unit = null
      ofOther = 0
      skipping = true
    },
  }
}

function lineFeedFrom(bytes: Uint8Array, from: number): number {
  let i = from
  while (bytes[i] !== lineFeed) i += 1
  return i
}

function contentEnd(bytes: Uint8Array, from: number, lineEnd: number): number {
  return lineEnd > from && bytes[lineEnd - 1] === carriageReturn ? lineEnd - 1 : lineEnd
}
