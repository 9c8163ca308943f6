import { createReadStream } from 'node:fs'
import { Trouble } from '#contract/errors.ts'
import { unreadableFile } from '../unreadableFile.ts'

/** One record of a CSV file and the number of the line on which it begins (the first is 1). */
export type CsvRecord = { line: number; fields: string[] }

/** Longer than any honest record; a file without line ends is refused instead of filling the memory. */
const maxRecordCharacters = 1_000_000

/**
 * The records of an RFC 4180 file in UTF-8, one after the other, read in pieces and each character once: lines may end in LF or
 * CRLF, a field may stand in double quotes (doubled inside) and then hold commas and line ends. Lines that start with "#"
 * outside of quotes are comments, as the formats of curves and calibrations say, unless `comments` is false. Rejects with a Trouble
 * that names the file.
 */
export async function* csvRecords(file: string, { comments } = { comments: true }): AsyncGenerator<CsvRecord> {
  let line = 0
  let begun = 0
  let length = 0
  let open: OpenRecord | null = null
  for await (const text of textLines(file)) {
    line++
    if (open === null) {
      begun = line
      length = 0
    }
    length += text.length + 1
    if (length > maxRecordCharacters) throw unreadable(file, begun, 'the line is longer than a million characters')
    if (open === null) {
      if (comments && text.startsWith('#')) continue
      if (!text.includes('"')) {
        yield { line, fields: text.split(',') }
        continue
      }
      open = { fields: [], field: '', place: 'start' }
    } else open.field += '\n'
    readOn(open, text)
    if (open.place === 'quoted') continue
    open.fields.push(open.field)
    yield { line: begun, fields: open.fields }
    open = null
  }
  if (open !== null) throw unreadable(file, begun, 'a quoted field is never closed')
}

async function* textLines(file: string): AsyncGenerator<string> {
  let rest = ''
  let first = true
  try {
    for await (const piece of createReadStream(file, { encoding: 'utf8', highWaterMark: 1 << 18 })) {
      const text: string = first && piece.startsWith('\uFEFF') ? piece.slice(1) : piece
      first = false
      const lines = (rest + text).split('\n')
      rest = lines.pop()!
      for (const line of lines) yield line.endsWith('\r') ? line.slice(0, -1) : line
      if (rest.length > maxRecordCharacters) break
    }
  } catch (thrown) {
    throw unreadableFile(file, thrown)
  }
  if (rest !== '') yield rest.endsWith('\r') ? rest.slice(0, -1) : rest
}

/** A record of which some lines are read: its whole fields, the field that is read, and where in it reading stands. */
type OpenRecord = { fields: string[]; field: string; place: 'start' | 'quoted' | 'behind' }

/** Reads one more line of a record; a quote opens a field only where nothing but blanks stands before it. */
function readOn(open: OpenRecord, text: string): void {
  for (let i = 0; i < text.length; i++) {
    const character = text[i]!
    if (open.place === 'quoted') {
      if (character !== '"') open.field += character
      else if (text[i + 1] === '"') {
        open.field += '"'
        i++
      } else open.place = 'behind'
    } else if (character === ',') {
      open.fields.push(open.field)
      open.field = ''
      open.place = 'start'
    } else if (character === '"' && open.place === 'start') {
      open.place = 'quoted'
      open.field = ''
    } else {
      open.field += character
      if (character !== ' ' && character !== '\t') open.place = 'behind'
    }
  }
}

const unreadable = (file: string, line: number, what: string) =>
  new Trouble(
    'not-readable',
    `${file}, line ${line}: ${what}.`,
    'Save the file as plain comma-separated text (RFC 4180).',
  )

/** What is said of a field that should hold a number, and holds none that can be taken as it stands. */
export function noNumber(name: string, text: string): string {
  const tooLarge = Math.abs(Number(text)) > Number.MAX_SAFE_INTEGER
  return `${name} is "${text.slice(0, 40)}", ${tooLarge ? 'which is too large to be read without rounding it' : 'which is no number'}`
}
