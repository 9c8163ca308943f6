import { expect, it } from 'vitest'
import type { StudyFields } from '#contract/programme/study.ts'
import { allocateBlocks, nothingAllocated } from '#domain/programme/study/allocation.ts'
import { cellKey } from '#domain/programme/study/cells.ts'
import { extensionFault } from '#domain/programme/study/extension.ts'
import { madeBoards, madeStudy } from './madeStudy.ts'

const before = madeStudy({ boards: madeBoards(6, 40), sparesPerSeries: 1 })
const blocks = allocateBlocks(before, nothingAllocated)
const counted = (keys: readonly string[]) => {
  const counts = new Map<string, number>()
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}
const allocated = {
  cells: counted(blocks.map(cellKey)),
  boards: counted(blocks.map(({ board }) => board)),
  blocks: blocks.length,
}

it.each<[string, Partial<StudyFields>]>([
  ['adds an adhesive', { adhesives: [...before.adhesives, 'epoxy E5'] }],
  ['adds an age', { agesMonths: [0, 3, 6, 12] }],
  ['adds blocks', { blocksPerCell: 13 }],
  ['adds a board', { boards: [...before.boards, { name: 'another', blocks: 9 }] }],
  ['says another title', { title: 'Which glue?' }],
])('takes a version that %s', (_what, changed) => {
  expect(extensionFault(before, { ...before, ...changed }, allocated)).toBeNull()
})

it.each<[string, Partial<StudyFields>, unknown]>([
  ['has another seed', { seed: 8 }, { kind: 'seed' }],
  ['drops an adhesive', { adhesives: ['casein C1', 'epoxy E4'] }, { kind: 'cells', cells: 8, blocks: 74 }],
  ['drops an age', { agesMonths: [0, 3] }, { kind: 'cells', cells: 6, blocks: 72 }],
  ['plans fewer blocks', { blocksPerCell: 11 }, { kind: 'fewer-blocks', allocated: 12 }],
  ['plans fewer spares', { sparesPerSeries: 0 }, { kind: 'fewer-spares', allocated: 1 }],
  ['drops a board', { boards: before.boards.slice(1) }, { kind: 'board', name: 'board 1', blocks: 37 }],
])('refuses one that %s', (_what, changed, fault) => {
  expect(extensionFault(before, { ...before, ...changed }, allocated)).toEqual(fault)
})

it('refuses nothing before anything is allocated', () => {
  expect(extensionFault(before, madeStudy({ seed: 9, adhesives: ['hide glue'] }), nothingAllocated)).toBeNull()
})
