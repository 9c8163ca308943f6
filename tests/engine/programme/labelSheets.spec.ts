import { expect, it } from 'vitest'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'
import { labelsOf, labelsToPrint } from '#engine/programme/labelSheets.ts'

const block = { number: '28', group: null }
const archive = {
  labelledBlocks: async ({ kind }: { kind: string }) => (kind === 'study' ? [] : [block, { ...block, number: '36' }]),
  chainHead: async () => ({ count: 7, hash: 'ab', instant: '2031-01-01T00:00:00.000Z' }),
}
const numbers = { kind: 'numbers', first: 2, last: 3 } as const

it('makes sheets of what the archive says of the numbers, with the head of its chain', async () => {
  const { labels, pages, html } = await labelsToPrint(archive, numbers, sheetOfGrid('A4', 5, 13))
  expect([labels, pages]).toEqual([2, 1])
  expect(html).toContain('Labels 28 to 36, page 1 of 1')
  expect(html).toContain('7:ab')
})

it('says where there is no label', async () => {
  await expect(labelsOf(archive, { kind: 'study', studyId: 1 })).rejects.toMatchObject({
    hint: 'Allocate the blocks of the study first.',
  })
})
