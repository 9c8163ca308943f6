import { readSheetCsv, type TextLayout } from '../csv/sheetCsv.ts'
import { readXlsx } from './readXlsx.ts'
import type { SheetFile } from './sheet.ts'
import { locked } from './zipParts.ts'

const packed = Buffer.from('PK\u0003\u0004', 'latin1')
const emptyPacked = Buffer.from('PK\u0005\u0006', 'latin1')
/** The container of old sheet files, in which locked new ones are kept too. */
const compound = Buffer.from('d0cf11e0a1b11ae1', 'hex')

/**
 * Reads a table from a file of sheets or of text; which of both it is, its first bytes say, not its name. `sheet` and `layout` are
 * what the person said of it; null: found from the file. Rejects with a Trouble that names the file.
 */
export async function readSheetFile(
  file: string,
  bytes: Buffer,
  said: { sheet: string | null } & TextLayout,
  signal?: AbortSignal,
): Promise<SheetFile> {
  const begins = (mark: Buffer) => bytes.subarray(0, mark.length).equals(mark)
  if (begins(compound)) throw locked(file)
  if (begins(packed) || begins(emptyPacked)) return await readXlsx(file, bytes, said.sheet, signal)
  return { sheets: [], sheet: await readSheetCsv(file, bytes, said, signal) }
}
