import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { readXlsx } from '#exchange/sheets/readXlsx.ts'
import { writtenSheet } from '#exchange/sheets/writtenSheet.ts'

const bytes = writtenSheet('Loads & more', [
  ['casein <C1>', null, { value: 812.5, fill: 'FFFF00' }],
  [],
  [null, { value: 'slipped', fill: 'FF0000' }, 7],
])

it('writes texts, numbers and fills at their places', async () => {
  const { sheets, sheet } = await readXlsx('a.xlsx', bytes, null)
  expect(sheets).toEqual([{ name: 'Loads & more', hidden: false }])
  expect(sheet.rows.map(({ row }) => row)).toEqual([1, 3])
  const [first, third] = sheet.rows.map(({ cells }) => cells)
  expect(first![0]).toMatchObject({ kind: 'text', text: 'casein <C1>', fill: null })
  expect(first![1]).toBeUndefined()
  expect(first![2]).toMatchObject({ kind: 'number', number: 812.5, fill: 'FFFF00' })
  expect(third![1]).toMatchObject({ kind: 'text', text: 'slipped', fill: 'FF0000' })
  expect(third![2]).toMatchObject({ kind: 'number', number: 7, fill: null })
})

const script = `
import sys, openpyxl
sheet = openpyxl.load_workbook(sys.argv[1])["Loads & more"]
print(sheet["A1"].value, sheet["C1"].value, sheet["C1"].fill.fgColor.rgb, sheet["B3"].value, sheet["C3"].fill.fill_type)
`
const hasOpenpyxl = spawnSync('python3', ['-c', 'import openpyxl']).status === 0

it.runIf(hasOpenpyxl)('is read by openpyxl as it was written', () => {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-sheet-'))
  try {
    const file = join(folder, 'a.xlsx')
    writeFileSync(file, bytes)
    expect(execFileSync('python3', ['-c', script, file], { encoding: 'utf8' })).toBe(
      'casein <C1> 812.5 FFFFFF00 slipped None\n',
    )
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
