// Held by tests/exchange/import/fates.spec.ts.
import type { FateCause } from '#contract/specimens/importedResult.ts'
import { fieldWords } from './rejectedWords.ts'

/** Why a block of a table that could be read is not new, as one sentence with its place. */
export function causeWords(cause: FateCause, row: number, column: string | null): string {
  return `Row ${row}${column === null ? '' : `, column ${column}`}: ${causeOf(cause)}.`
}

function causeOf(cause: FateCause): string {
  switch (cause.kind) {
    case 'same-number':
      return 'the archive has the specimen of this number with the same result'
    case 'other-value':
      return `the archive has the specimen of this number with another ${fieldWords[cause.field]}`
    case 'other-result':
      return 'the archive has the specimen of this number with another result'
    case 'number-twice':
      return `row ${cause.row} has the same number with ${cause.same ? 'the same' : 'other'} values`
    case 'same-place':
      return 'this row of the same file was imported before'
    case 'set-aside':
      return 'the archive has this result of it, and it was set aside; let it count again instead'
    case 'grown':
      return `“${cause.fileName}”, of which this file is a later state, gave it before`
    case 'changed':
      return `“${cause.fileName}”, of which this file is a later state, gave other values for it; correct the specimen, or set its result aside`
  }
}
