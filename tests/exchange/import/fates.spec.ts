import { expect, it } from 'vitest'
import type { FateCause, ImportedRow, JudgedBlock } from '#contract/specimens/importedResult.ts'
import { importFates, importSummary } from '#exchange/import/fates.ts'
import { readBlock } from '../../archive/storedImport.ts'

const rejected: ImportedRow = { outcome: 'rejected', row: 3, column: null, number: 'A', reason: 'Row 3: spoilt.' }
const judged = (cause: FateCause | null): JudgedBlock => ({
  ...{ fate: cause === null ? 'new' : 'already-there', cause, number: '28', specimenId: 5 },
})

it('puts what was rejected on reading and what the archive said in the order of the table', () => {
  const rows = [{ ...readBlock(2), remarks: ['One.', 'Two.'] }, rejected, readBlock(4, {}, '2')]
  const fates = importFates(rows, [judged(null), judged({ kind: 'same-place' })], false)
  expect(fates).toEqual([
    { row: 2, column: null, fate: 'new', reason: 'One. Two.', number: '28', specimenId: 5 },
    { row: 3, column: null, fate: 'rejected', reason: 'Row 3: spoilt.', number: 'A', specimenId: null },
    {
      ...{ row: 4, column: '2', fate: 'already-there', number: '28', specimenId: 5 },
      reason: 'Row 4, column 2: this row of the same file was imported before.',
    },
  ])
  expect(importSummary(fates, { emptyRows: 7, fileSha256: 'ab' }, false)).toEqual({
    ...{ new: 1, alreadyThere: 1, rejected: 1, emptyRows: 7, fileSha256: 'ab', dryRun: false },
  })
})

it('names no specimen in a dry run', () => {
  expect(importFates([readBlock(2)], [judged(null)], true)[0]!.specimenId).toBeNull()
})

it.each<[FateCause, string]>([
  [{ kind: 'same-number' }, 'with the same result'],
  [{ kind: 'other-value', field: 'board' }, 'with another board'],
  [{ kind: 'other-result' }, 'with another result'],
  [{ kind: 'number-twice', row: 4, same: true }, 'row 4 has the same number with the same values'],
  [{ kind: 'number-twice', row: 4, same: false }, 'row 4 has the same number with other values'],
  [{ kind: 'set-aside' }, 'let it count again'],
  [{ kind: 'grown', fileName: 'a.csv' }, 'a.csv'],
  [{ kind: 'changed', fileName: 'a.csv' }, 'gave other values'],
])('says %j in a sentence', (cause, words) => {
  expect(importFates([readBlock(2)], [judged(cause)], true)[0]!.reason).toContain(words)
})
