import type { ColumnName, LineFormatChoice } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { lineChecks } from '../lineFormats/lineCheck.ts'
import type { BenchSamples } from './benchModel.ts'
import { LineWriter } from './lineWriter.ts'
import type { Characteristic } from './transferCharacteristic.ts'

export type LineEncoder = {
  /** Adds one line for each of the first `count` samples. */
  add(samples: BenchSamples, count: number): void
  /** The bytes of the lines added since the last call. */
  take(): Uint8Array
  lines(): { sent: number; damaged: number }
}

export type LineEncoderOptions = {
  lineFormat: LineFormatChoice
  characteristic: Characteristic
  seed: number
  /** Share of lines in which one byte arrives wrong, 0 to 1. */
  damagedShare?: number
  lineEnd?: '\n' | '\r\n'
}

/** The device's 32-bit counters start again here. */
const counterEnd = 2 ** 32

/** Writes samples as an amplifier sends them, in any of the line formats; counters wrap at 2^32 as theirs do. */
export function createLineEncoder(options: LineEncoderOptions): LineEncoder {
  const { lineFormat, characteristic, damagedShare = 0, lineEnd = '\n' } = options
  const writer = new LineWriter()
  const noise = createRandom(options.seed, 21)
  let sent = 0
  let damaged = 0

  function column(name: ColumnName, timeUs: number, counts: number, sequence: number): void {
    if (name === 'counts') writer.whole(counts)
    else if (name === 'time_us') writer.whole(timeUs % counterEnd)
    else if (name === 'time_ms') writer.whole(Math.floor(timeUs / 1000) % counterEnd)
    else if (name === 'time_s') writer.text((timeUs / 1e6).toFixed(6))
    else if (name === 'seq') writer.whole(sequence % counterEnd)
    else if (name === 'force_N')
      writer.text(((counts - characteristic.zeroCounts) * characteristic.nPerCount).toFixed(2))
    else writer.byte(48)
  }

  function line(timeUs: number, counts: number, sequence: number): void {
    const start = writer.length
    if (lineFormat.name === 'number') writer.whole(counts)
    else if (lineFormat.name === 'columns')
      for (const [place, name] of lineFormat.columns.entries()) {
        if (place > 0) writer.byte(44)
        column(name, timeUs, counts, sequence)
      }
    else {
      const check = lineChecks[lineFormat.name]
      writer.byte(36)
      writer.text(check.letters)
      writer.byte(44)
      writer.whole(sequence % counterEnd)
      writer.byte(44)
      writer.whole(timeUs % counterEnd)
      writer.byte(44)
      writer.whole(counts)
      const value = writer.checkFrom(start + 1, check)
      writer.byte(42)
      writer.hexadecimal(value, check.digits)
    }
    if (damagedShare > 0 && noise.unit() < damagedShare) {
      writer.damage(noise.wholeBetween(start, writer.length - 1))
      damaged += 1
    }
    writer.text(lineEnd)
    sent += 1
  }

  // A line end first: whatever a reader heard before cannot run into the first line.
  writer.text(lineEnd)

  return {
    add(samples, count) {
      for (let i = 0; i < count; i++) line(samples.timeUs[i]!, samples.counts[i]!, samples.sequence[i]!)
    },
    take: () => writer.take(),
    lines: () => ({ sent, damaged }),
  }
}
