import { describe, expect, it } from 'vitest'
import { sheetOfGrid, sheetOfSize } from '#domain/programme/labels/sheetGeometry.ts'
import { labelPages } from '#exchange/labels/labelPages.ts'

const labels = (count: number) => Array.from({ length: count }, (_, i) => ({ number: String(1000 + i), group: 'loft' }))
const head = { count: 4312, hash: 'c0ffee' }
const numbersOn = (page: string) => (page.match(/font-weight="bold"/g) ?? []).length

describe('a sheet of 5 x 13', () => {
  const { pages: count, drawn: pages } = labelPages(labels(131), sheetOfGrid('A4', 5, 13), head)

  it('fills page after page', () => {
    expect(count).toBe(3)
    expect(pages.map(numbersOn)).toEqual([65, 65, 1])
  })

  it('carries title, page, head of the chain and the bar on every page', () => {
    for (const [index, page] of pages.entries()) {
      expect(page).toContain(`Labels 1000 to 1130, page ${index + 1} of 3`)
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
  const { drawn: pages } = labelPages(labels(25), sheet, head)
  expect(pages.map(numbersOn)).toEqual([24, 1, 0])
  expect(pages.map((page) => page.includes('h100m0'))).toEqual([false, false, true])
})

it('says nothing of a chain that has no entry yet', () => {
  expect(labelPages(labels(1), sheetOfGrid('A4', 5, 13), null).drawn[0]).not.toContain('chain')
})

it('draws only the pages that are wanted', () => {
  const { pages, drawn } = labelPages(labels(131), sheetOfGrid('A4', 5, 13), head, { from: 1, count: 1 })
  expect(pages).toBe(3)
  expect(drawn).toHaveLength(1)
  expect(drawn[0]).toContain('page 2 of 3')
})

it('refuses a sheet whose labels lie beside the page or are too small for a code', () => {
  for (const sheet of [sheetOfGrid('A4', 12, 13), { ...sheetOfGrid('A4', 5, 13), leftMm: 40 }])
    expect(() => labelPages(labels(1), sheet, head)).toThrow(expect.objectContaining({ code: 'invalid-input' }))
})
