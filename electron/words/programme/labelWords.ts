import type { ChainHead } from '#contract/keeping/archive.ts'
import type { sheetFault } from '#domain/programme/labels/sheetGeometry.ts'
import { headText } from '../keeping/headWords.ts'

/** Beside the bar of 100 mm that every sheet carries. */
export const barWords = '100 mm. Print at 100 %, not fitted to the page, and measure this bar.'

/** What a sheet is, at its head. */
export function sheetTitle(title: string, page: number, pages: number): string {
  return `${title}, page ${page} of ${pages}`
}

/** The end of the chain of checksums as it was when the sheet was made. */
export function headOnSheet(head: Pick<ChainHead, 'count' | 'hash'>): string {
  return `End of the chain: ${headText(head)}`
}

/** Why a sheet of labels cannot be printed, and what to do. */
export const sheetFaultWords: Record<NonNullable<ReturnType<typeof sheetFault>>, string> = {
  'too-wide':
    'The labels reach over the right edge of the page: choose fewer columns, narrower labels or smaller gaps.',
  'too-high': 'The labels reach over the lower edge of the page: choose fewer rows, lower labels or smaller gaps.',
  'too-small':
    'The labels are too small for a code that can be read, which needs labels of 25 mm x 12 mm: choose fewer columns or rows.',
}
