import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'

const unsaid = { sheet: null, delimiter: null, encoding: null, headerRow: 1 }

describe('a file of past results', () => {
  it('is told by its first bytes, whatever its name says', async () => {
    const packed = readFileSync(new URL('../../../samples/sheets/from-1904.xlsx', import.meta.url))
    expect((await readSheetFile('results.csv', packed, unsaid)).sheet.name).toBe('Sheet')
    const text = await readSheetFile('results.xlsx', Buffer.from('a,b\n1,2\n'), unsaid)
    expect(text).toMatchObject({ sheets: [], sheet: { name: null, lastRow: 2 } })
  })

  it('is refused with what to do where it is locked or of an old program', async () => {
    const old = Buffer.from('d0cf11e0a1b11ae1000000000000', 'hex')
    await expect(readSheetFile('old.xls', old, unsaid)).rejects.toMatchObject({
      code: 'not-readable',
      hint: 'Open it in a sheet program, and save it as .xlsx without a password.',
    })
  })
})
