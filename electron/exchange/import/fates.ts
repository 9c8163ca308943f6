import type { ImportedRow, ImportFate, ImportSummary, JudgedBlock } from '#contract/specimens/importedResult.ts'
import { causeWords } from '#words/specimens/import/fateWords.ts'

/** What became of every block of a table, in its order; `judged` are those that could be read, in the same order. */
export function importFates(
  rows: readonly ImportedRow[],
  judged: readonly JudgedBlock[],
  dryRun: boolean,
): ImportFate[] {
  let next = 0
  return rows.map((block) => {
    const { row, column } = block
    if (block.outcome === 'rejected')
      return { row, column, fate: 'rejected', reason: block.reason, number: block.number, specimenId: null }
    const { fate, cause, number, specimenId } = judged[next++]!
    const reason = cause === null ? remarksOf(block.remarks) : causeWords(cause, row, column)
    return { row, column, fate, reason, number, specimenId: dryRun ? null : specimenId }
  })
}

function remarksOf(remarks: readonly string[]): string | null {
  return remarks.length === 0 ? null : remarks.join(' ')
}

/** How many of each fate there are. */
export function importSummary(
  fates: readonly ImportFate[],
  table: { emptyRows: number; fileSha256: string },
  dryRun: boolean,
): ImportSummary {
  const count = (fate: ImportFate['fate']) => fates.filter((one) => one.fate === fate).length
  return {
    new: count('new'),
    alreadyThere: count('already-there'),
    rejected: count('rejected'),
    emptyRows: table.emptyRows,
    fileSha256: table.fileSha256,
    dryRun,
  }
}
