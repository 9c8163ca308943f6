import type { LineFormatChoice } from '#contract/bench/source.ts'
import { createReadingBatch } from '../readingBatch.ts'
import { type BatchParser, createBatchParser, longestLine } from './batchParser.ts'

export { longestLine }

export type LineSink = {
  /** deviceTimeUs and sequence as the device sent them (they wrap); NaN when the format has none. */
  reading(value: number, deviceTimeUs: number, sequence: number): void
  /** A line that is no reading, without its line end, at most `longestLine` bytes. The bytes are the receiver's to keep. */
  rejected(line: Uint8Array): void
}

export type LineParser = BatchParser

/** The batch parser for whoever wants readings one by one: they are handed over at the end of each chunk. */
export function createLineParser(
  choice: LineFormatChoice,
  sink: LineSink,
  options: { startsAtLine?: boolean } = {},
): LineParser {
  const batch = createReadingBatch()
  const parser = createBatchParser(choice, batch, sink.rejected, options)
  return {
    ...parser,
    push(chunk) {
      parser.push(chunk)
      for (let i = 0; i < batch.count; i++) sink.reading(batch.values[i]!, batch.deviceTimeUs[i]!, batch.sequence[i]!)
      batch.clear()
    },
  }
}
