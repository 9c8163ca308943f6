// Held by tests/exchange/csv/sheetCsv.spec.ts.
import { isUtf8 } from 'node:buffer'
import { Trouble } from '#contract/errors.ts'
import type { TextEncoding } from '#contract/specimens/importMapping.ts'

const utf8Mark = 'efbbbf'
const marks: readonly { mark: string; encoding: TextEncoding }[] = [
  { mark: utf8Mark, encoding: 'utf-8' },
  { mark: 'fffe', encoding: 'utf-16le' },
  { mark: 'feff', encoding: 'utf-16be' },
]

/** Where the zeros of two-byte characters are looked for. */
const looked = 4096

/** What is looked at first: more characters than any question of the layout asks for, in whatever encoding. */
const startBytes = 300_000

/**
 * The text of a file without the mark that may stand before it, as UTF-8 bytes, with its start as text, and in which characters it
 * was written: as said, else as its mark says, else UTF-16 where every other byte is zero, UTF-8 where it can be that, and
 * otherwise Windows-1252, which is what older programs of western languages wrote. Throws Trouble `not-readable` for what is no
 * text.
 */
export function tableText(
  file: string,
  bytes: Buffer,
  said: TextEncoding | null,
): { start: string; utf8: Buffer; encoding: TextEncoding } {
  const encoding = said ?? foundEncoding(bytes)
  // The decoder leaves out the mark by itself
  const start = new TextDecoder(encoding).decode(bytes.subarray(0, startBytes))
  if (start.slice(0, looked).includes('\0'))
    throw new Trouble(
      'not-readable',
      `${file}: this is neither a table of text (CSV) nor a file of sheets (.xlsx).`,
      'Save the sheet as .xlsx or as CSV, and read that.',
    )
  return { start, utf8: encoding === 'utf-8' ? withoutMark(bytes) : asUtf8(bytes, encoding), encoding }
}

/** A large file is not held twice where its bytes are UTF-8 already. */
function withoutMark(bytes: Buffer): Buffer {
  return bytes.subarray(0, 3).toString('hex') === utf8Mark ? bytes.subarray(3) : bytes
}

function asUtf8(bytes: Buffer, encoding: TextEncoding): Buffer {
  return Buffer.from(new TextDecoder(encoding).decode(bytes))
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
