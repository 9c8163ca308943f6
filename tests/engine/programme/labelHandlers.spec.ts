import { expect, it } from 'vitest'
import { mostNumbers } from '#contract/programme/labelProcedures.ts'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { labelHandlers } from '#engine/programme/labelHandlers.ts'

const sheet = sheetOfGrid('A4', 2, 2)
const choice = { kind: 'numbers', first: 1, last: 9 } as const
const archive = {
  labelledBlocks: async () => Array.from({ length: 9 }, (_, i) => ({ number: String(10 + i), group: null })),
  chainHead: async () => null,
}
const handlers = (more: object = {}) => labelHandlers({ archive, ...more } as never)

it('draws the pages that are wanted and counts all', async () => {
  const { labels, pages, drawn } = await handlers()['labels.pages']({ choice, sheet, from: 2, count: 5 })
  expect([labels, pages, drawn.length]).toEqual([9, 3, 1])
})

it('gives others their turn between two sheets', async () => {
  let turns = 0
  const counting = setInterval(() => turns++, 0)
  const block = { number: '19', group: null }
  const many = { ...archive, labelledBlocks: async () => Array.from({ length: 400 }, () => block) }
  const { drawn } = await handlers({ archive: many })['labels.pages']({ choice, sheet, from: 0, count: 1000 })
  clearInterval(counting)
  expect(drawn).toHaveLength(100)
  expect(turns).toBeGreaterThan(10)
})

it('asks for fewer where a study has more labels than are printed at once', async () => {
  const block = { number: '19', group: null }
  const many = { ...archive, labelledBlocks: async () => Array.from({ length: mostNumbers + 1 }, () => block) }
  const asked = { choice: { kind: 'study', studyId: 1 } as const, sheet, from: 0, count: 1 }
  await expect(handlers({ archive: many })['labels.pages'](asked)).rejects.toMatchObject({ code: 'invalid-input' })
})

it('hands the sheets to the printer of the host', async () => {
  const given: string[] = []
  const printPdf = async (html: string) => {
    given.push(html)
    return new Uint8Array([37, 80, 68, 70])
  }
  const { bytes } = await handlers({ printPdf })['labels.pdf']({ choice, sheet })
  expect([...bytes]).toEqual([37, 80, 68, 70])
  expect(given[0]).toContain('page 3 of 3')
})

it('says that a host without a printer has none', async () => {
  await expect(handlers()['labels.pdf']({ choice, sheet })).rejects.toMatchObject({ code: 'unsupported' })
})
