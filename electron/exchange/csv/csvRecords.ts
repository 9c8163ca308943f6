// Held by tests/exchange/csv/curveCsv.spec.ts.
import { createReadStream } from 'node:fs'
import { Trouble } from '#contract/errors.ts'

/** One record of a CSV file and the number of the line on which it begins (the first is 1). */
export type CsvRecord = { line: number; fields: string[] }

/** Longer than any honest record; a file without line ends is refused instead of filling the memory. */
const maxRecordCharacters = 1_000_000

/**
 * The records of an RFC 4180 file in UTF-8, one after the other, read in pieces: lines may end in LF or CRLF, a field may
 * stand in double quotes (doubled inside) and then hold commas and line ends. Lines that start with "#" are comments.
 * Rejects with a Trouble that names the file.
 */
export async function* csvRecords(file: string): AsyncGenerator<CsvRecord> {
  let line = 0
  let begun = 0
  let open = ''
  for await (const text of textLines(file)) {
    line++
    if (open === '') {
      if (text.startsWith('#')) continue
      begun = line
      open = text
    } else open += `\n${text}`
    if (open.length > maxRecordCharacters) throw unreadable(file, begun, 'the line is longer than a million characters')
    const fields = splitRecord(open)
    if (fields === null) continue
    open = ''
    yield { line: begun, fields }
  }
  if (open !== '') throw unreadable(file, begun, 'a quoted field is never closed')
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
      if (rest.length > maxRecordCharacters) break
      for (const line of lines) yield line.endsWith('\r') ? line.slice(0, -1) : line
    }
  } catch (thrown) {
    throw cannotOpen(file, thrown)
  }
  if (rest !== '') yield rest.endsWith('\r') ? rest.slice(0, -1) : rest
}

/** The fields of one record, or null while a quoted field is still open. */
function splitRecord(text: string): string[] | null {
  if (!text.includes('"')) return text.split(',')
  const fields: string[] = []
  let field = ''
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const character = text[i]!
    if (quoted) {
      if (character !== '"') field += character
      else if (text[i + 1] === '"') {
        field += '"'
        i++
      } else quoted = false
    } else if (character === '"' && field.trim() === '') {
      quoted = true
      field = ''
    } else if (character === ',') {
      fields.push(field)
      field = ''
    } else field += character
  }
  if (quoted) return null
  fields.push(field)
  return fields
}

const unreadable = (file: string, line: number, what: string) =>
  new Trouble(
    'not-readable',
    `${file}, line ${line}: ${what}.`,
    'Save the file as plain comma-separated text (RFC 4180).',
  )

function cannotOpen(file: string, thrown: unknown): unknown {
  if (!(thrown instanceof Error) || !('code' in thrown)) return thrown
  if (thrown.code === 'ENOENT')
    return new Trouble('not-found', `${file}: there is no such file.`, 'Check the path and the name.')
  if (thrown.code === 'EACCES' || thrown.code === 'EPERM')
    return new Trouble('denied', `${file}: this user may not read the file.`, 'Allow reading it, or copy it elsewhere.')
  if (thrown.code === 'EISDIR')
    return new Trouble('not-readable', `${file}: this is a folder.`, 'Name the curve file inside it.')
  return new Trouble('not-readable', `${file}: cannot be read (${thrown.message}).`, 'Check the disk and the path.')
}

/** What is said of a field that should hold a number. */
export function noNumber(name: string, text: string): string {
  return `${name} is "${text.slice(0, 40)}", which is no number`
}
