// Held by tests/exchange/sheets/readXlsx.spec.ts.
import { StringDecoder } from 'node:string_decoder'
import yauzl, { type Entry, type ZipFile } from 'yauzl'
import { Trouble } from '#contract/errors.ts'

/** The parts of a packed file, by name. */
export type ZipParts = {
  has(name: string): boolean
  /** The text of a part in pieces. Throws Trouble `not-readable` for a part that is not there, is encrypted or unpacks to too much. */
  text(name: string): AsyncGenerator<string>
}

/** A million formatted rows take some 300 MB; what is larger was made to fill a memory. */
const mostBytes = 1_073_741_824
const mostParts = 10_000

/** Opens a packed file that lies in memory. Throws Trouble `not-readable` where it is none, or a part of it would unpack to over 1 GiB. */
export async function openZip(file: string, bytes: Buffer): Promise<ZipParts> {
  const damaged = (thrown: unknown) =>
    thrown instanceof Trouble
      ? thrown
      : new Trouble(
          'not-readable',
          `${file}: the file is damaged (${thrown instanceof Error ? thrown.message : String(thrown)}).`,
          'Open it in the program that wrote it, and save it again.',
        )
  try {
    const zip = await yauzl.fromBufferPromise(bytes, { lazyEntries: true, autoClose: false })
    const parts = await entriesOf(file, zip)
    return {
      has: (name) => parts.has(name),
      async *text(name) {
        const entry = parts.get(name)
        if (entry === undefined) throw damaged(new Error(`the part ${name.slice(0, 100)} is missing`))
        try {
          yield* textOf(file, zip, entry)
        } catch (thrown) {
          throw damaged(thrown)
        }
      },
    }
  } catch (thrown) {
    throw damaged(thrown)
  }
}

async function entriesOf(file: string, zip: ZipFile): Promise<Map<string, Entry>> {
  const parts = new Map<string, Entry>()
  let bytes = 0
  for await (const entry of zip.eachEntry()) {
    bytes += entry.uncompressedSize
    if (parts.size >= mostParts || bytes > mostBytes) throw tooLarge(file)
    parts.set(entry.fileName.replace(/^\//, ''), entry)
  }
  return parts
}

async function* textOf(file: string, zip: ZipFile, entry: Entry): AsyncGenerator<string> {
  if (entry.isEncrypted()) throw locked(file)
  const decoder = new StringDecoder('utf8')
  let bytes = 0
  // The sizes that the file states were added up before; that they are true is seen while it is unpacked
  for await (const piece of (await zip.openReadStreamPromise(entry)) as AsyncIterable<Buffer>) {
    bytes += piece.length
    if (bytes > mostBytes) throw tooLarge(file)
    yield decoder.write(piece)
  }
  yield decoder.end()
}

const tooLarge = (file: string) =>
  new Trouble(
    'not-readable',
    `${file}: the file would unpack to more than 1 GiB.`,
    'Copy the rows that are wanted into a new sheet, and save that.',
  )

/** What is said of a file that only opens with a password. */
export const locked = (file: string) =>
  new Trouble(
    'not-readable',
    `${file}: the file is locked with a password, or written by an old sheet program (.xls).`,
    'Open it in a sheet program, and save it as .xlsx without a password.',
  )
