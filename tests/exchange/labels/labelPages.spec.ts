import { describe, expect, it } from 'vitest'
import { sheetOfGrid, sheetOfSize } from '#domain/programme/labels/sheetGeometry.ts'
import { labelPages } from '#exchange/labels/labelPages.ts'

const labels = (count: number) => Array.from({ length: count }, (_, i) => ({ number: String(1000 + i), group: 'loft' }))
const notes = { title: 'Study 1', head: { count: 4312, hash: 'c0ffee' } }
const numbersOn = (page: string) => (page.match(/font-weight="bold"/g) ?? []).length

describe('a sheet of 5 x 13', () => {
  const pages = labelPages(labels(131), sheetOfGrid('A4', 5, 13), notes)

  it('fills page after page', () => {
    expect(pages.map(numbersOn)).toEqual([65, 65, 1])
  })

  it('carries title, page, head of the chain and the bar on every page', () => {
    for (const [index, page] of pages.entries()) {
      expect(page).toContain(`Study 1, page ${index + 1} of 3`)
      expect(page).toContain('4312:c0ffee')
      expect(page).toContain('h100m0')
    }
  })

  it('is as large as the paper, one unit a millimetre', () => {
    expect(pages[0]).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"')
  })
})

it('puts the notes on a last page where the labels leave no margin for them', () => {
  const sheet = { ...sheetOfSize('A4', 70, 37), columns: 3, rows: 8, leftMm: 0, topMm: 0.5 }
  const pages = labelPages(labels(25), sheet, notes)
  expect(pages.map(numbersOn)).toEqual([24, 1, 0])
  expect(pages.map((page) => page.includes('h100m0'))).toEqual([false, false, true])
})

it('says nothing of a chain that has no entry yet', () => {
  expect(labelPages(labels(1), sheetOfGrid('A4', 5, 13), { title: 'New', head: null })[0]).not.toContain('chain')
})
