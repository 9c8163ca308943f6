import { createLineParser, type LineParser } from '#acquisition/lineFormats/lineParser.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'

/** A parser that hands over its readings one by one, at the end of each chunk. */
export function readLines(
  choice: LineFormatChoice,
  reading: (value: number, deviceTimeUs: number, sequence: number) => void,
  rejected: (line: Uint8Array) => void = () => {},
  options: { startsAtLine?: boolean } = {},
): LineParser {
  const batch = createReadingBatch()
  const parser = createLineParser(choice, batch, rejected, options)
  return {
    ...parser,
    push(chunk) {
      for (let from = 0; from < chunk.length; ) {
        from += parser.push(chunk.subarray(from))
        for (let i = 0; i < batch.count; i++) reading(batch.values[i]!, batch.deviceTimeUs[i]!, batch.sequence[i]!)
        batch.clear()
      }
      return chunk.length
    },
  }
}
