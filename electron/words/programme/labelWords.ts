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

/** What sheets of labels are called. */
export function labelsTitle(first: string, last: string): string {
  return first === last ? `Label ${first}` : `Labels ${first} to ${last}`
}

/** Why a sheet of labels cannot be printed, and what to do. */
export const sheetFaultWords: Record<NonNullable<ReturnType<typeof sheetFault>>, [message: string, hint: string]> = {
  'too-wide': [
    'The labels reach over the right edge of the page.',
    'Choose fewer columns, narrower labels or smaller gaps.',
  ],
  'too-high': ['The labels reach over the lower edge of the page.', 'Choose fewer rows, lower labels or smaller gaps.'],
  'too-small': [
    'The labels are too small for a code that can be read, which needs 25 mm x 12 mm.',
    'Choose fewer columns or rows, or larger labels.',
  ],
}
