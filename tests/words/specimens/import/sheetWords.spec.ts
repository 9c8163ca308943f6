import { expect, it } from 'vitest'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetView } from '#contract/specimens/sheetView.ts'
import { mappingGap, mappingRemarks, sheetRemarks } from '#words/specimens/import/sheetWords.ts'

const base: ImportMapping = { headerRow: 1, layout: 'row-per-specimen', fields: {} }
const view: SheetView = {
  ...{ fileSha256: '', sheets: [], sheet: null, text: null, headerRow: 1, proposed: base },
  columns: [{ letters: 'A', heading: '', name: 'A', filled: 1, fills: [] }],
  rows: [{ row: 2, cells: [] }],
  ...{ filledRows: 1, emptyRows: 0, hiddenRows: 0, merged: 0, formulas: 0, errors: 0 },
}

it('says nothing of a plain sheet', () => expect(sheetRemarks(view)).toEqual([]))

it.each<[Partial<SheetView>, string]>([
  [{ filledRows: 900 }, 'The first 1 of 900 rows are shown; all are read.'],
  [{ sheets: [{ name: 'Old', hidden: true }] }, '“Old” is hidden and read only if you choose so.'],
  [{ hiddenRows: 2 }, '2 rows are hidden in the sheet and read like all others.'],
  [{ merged: 2 }, '2 cells have their value from a merged cell; each is marked “merged”.'],
  [{ formulas: 1 }, '1 cell holds a formula; the stored value counts.'],
  [{ errors: 1 }, '1 formula failed or has no stored value; such a cell spoils its row where it is read.'],
  [{ emptyRows: 1_000_000 }, '1 000 000 rows are empty and passed over.'],
  [{ columns: [] }, 'The sheet holds nothing.'],
])('says what is to be known: %j', (change, words) => expect(sheetRemarks({ ...view, ...change })).toEqual([words]))

it('says what a mapping lacks', () => {
  expect(mappingGap(base)).toContain('load')
  expect(mappingGap({ ...base, fields: { strength: { column: 'A' } } })).toBeNull()
  expect(mappingGap({ ...base, layout: 'row-per-group', replicates: { columns: [] } })).toContain('replicates')
  expect(mappingGap({ ...base, layout: 'row-per-group', replicates: { columns: ['1'] } })).toBeNull()
  expect(mappingGap({ ...base, layout: 'blocks', blocks: [] })).toContain('block')
})

it('says what a mapping leaves open: adhesive, and bonded area where there is a load alone', () => {
  const blocks = [{ load: 'B', adhesive: { value: 'casein C1' }, area: 'C' }]
  expect(mappingRemarks({ ...base, layout: 'blocks', fields: { load: { unit: 'N' } }, blocks })).toEqual([])
  const load = { column: 'Load' }
  const adhesive = { column: 'Glue' }
  expect(mappingRemarks({ ...base, fields: { load } })).toEqual([
    expect.stringContaining('(not named)'),
    expect.stringContaining('no strength'),
  ])
  expect(mappingRemarks({ ...base, fields: { load, adhesive, overlapLength: load } })).toHaveLength(1)
  expect(mappingRemarks({ ...base, fields: { load, adhesive, overlapLength: load, overlapWidth: load } })).toEqual([])
  const replicates = { columns: ['1'] }
  expect(
    mappingRemarks({ ...base, layout: 'row-per-group', fields: { strength: { unit: 'psi' }, adhesive }, replicates }),
  ).toEqual([])
})
