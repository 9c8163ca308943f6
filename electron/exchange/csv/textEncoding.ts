// Held by tests/exchange/csv/sheetCsv.spec.ts.
import { isUtf8 } from 'node:buffer'
import { Trouble } from '#contract/errors.ts'
import type { TextEncoding } from '#contract/specimens/importMapping.ts'

const marks: readonly { mark: string; encoding: TextEncoding }[] = [
  { mark: 'efbbbf', encoding: 'utf-8' },
  { mark: 'fffe', encoding: 'utf-16le' },
  { mark: 'feff', encoding: 'utf-16be' },
]

/** Where the zeros of two-byte characters are looked for. */
const looked = 4096

/**
 * The text of a file without the mark that may stand before it, and in which characters it was written: as said, else as its mark
 * says, else UTF-16 where every other byte is zero, UTF-8 where it can be that, and otherwise Windows-1252, which is what older
 * programs of western languages wrote. Throws Trouble `not-readable` for what is no text.
 */
export function decodedText(
  file: string,
  bytes: Buffer,
  said: TextEncoding | null,
): { text: string; encoding: TextEncoding } {
  const encoding = said ?? foundEncoding(bytes)
  // The decoder leaves out the mark by itself
  const text = new TextDecoder(encoding).decode(bytes)
  if (text.slice(0, looked).includes('\0'))
    throw new Trouble(
      'not-readable',
      `${file}: this is neither a table of text (CSV) nor a file of sheets (.xlsx).`,
      'Save the sheet as .xlsx or as CSV, and read that.',
    )
  return { text, encoding }
}

function foundEncoding(bytes: Buffer): TextEncoding {
  const start = bytes.subarray(0, 3).toString('hex')
  const marked = marks.find(({ mark }) => start.startsWith(mark))
  if (marked !== undefined) return marked.encoding
  const zeros = [0, 0]
  for (let i = 0; i < Math.min(bytes.length, looked); i++) if (bytes[i] === 0) zeros[i % 2]!++
  const share = (place: number) => zeros[place]! / (Math.min(bytes.length, looked) / 2)
  if (share(1) > 0.5 && share(0) < 0.1) return 'utf-16le'
  if (share(0) > 0.5 && share(1) < 0.1) return 'utf-16be'
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252'
}
