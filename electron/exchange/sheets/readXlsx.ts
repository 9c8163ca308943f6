import { Trouble } from '#contract/errors.ts'
import { readSharedStrings } from './sharedStrings.ts'
import type { SheetFile } from './sheet.ts'
import { gatherStyles } from './styles.ts'
import { readWorkbook } from './workbook.ts'
import { readWorksheet } from './worksheet.ts'
import { readElements } from './xmlElements.ts'
import { openZip } from './zipParts.ts'

/**
 * Reads one sheet of a file of sheets (ISO/IEC 29500, .xlsx): the one named, or the first that is not hidden. Values alone count,
 * never formulas; of formulas the value that was stored. Throws Trouble `not-readable` for what is damaged, locked or too large,
 * `not-found` where no sheet has that name.
 */
export async function readXlsx(
  file: string,
  bytes: Buffer,
  sheetName: string | null,
  signal?: AbortSignal,
): Promise<SheetFile> {
  const parts = await openZip(file, bytes)
  const book = await readWorkbook(file, parts)
  const chosen =
    sheetName === null ? book.sheets.find(({ hidden }) => !hidden) : book.sheets.find(({ name }) => name === sheetName)
  if (chosen === undefined)
    throw new Trouble(
      'not-found',
      sheetName === null ? `${file}: every sheet is hidden.` : `${file}: there is no sheet "${sheetName}".`,
      `Name one of its sheets: ${namesShown(book.sheets.map(({ name }) => name))}.`,
    )
  const styles = gatherStyles()
  if (book.styles !== null) await readElements(file, parts.text(book.styles), styles, { signal })
  const strings =
    book.sharedStrings === null ? [] : await readSharedStrings(file, parts.text(book.sharedStrings), signal)
  const shared = { styles: styles.styles(), strings, from1904: book.from1904 }
  const { rows, lastRow } = await readWorksheet(file, parts.text(chosen.part), shared, signal)
  return {
    sheets: book.sheets.map(({ name, hidden }) => ({ name, hidden })),
    sheet: { name: chosen.name, rows, lastRow, text: null },
  }
}

const mostNamesShown = 20

function namesShown(names: readonly string[]): string {
  const shown = names.slice(0, mostNamesShown).map((name) => name.slice(0, 100))
  return [...shown, ...(names.length > mostNamesShown ? ['…'] : [])].join(', ')
}
