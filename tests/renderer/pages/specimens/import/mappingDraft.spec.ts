import { describe, expect, it } from 'vitest'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { SheetColumn } from '#contract/specimens/sheetView.ts'
import {
  coloursOf,
  columnOf,
  measuredOf,
  readyMapping,
  rolesOf,
  valueOfBlock,
  withBlockValue,
  withLayout,
  withMeasured,
  withRole,
  withSource,
} from '#renderer/pages/specimens/import/mappingDraft.ts'

const column = (letters: string, heading: string, fills: SheetColumn['fills'] = []): SheetColumn => ({
  ...{ letters, heading, fills, filled: 2, name: heading === '' ? letters : heading },
})
const columns = [
  column('A', 'Adhesive'),
  column('B', 'Load', [
    { fill: null, count: 1 },
    { fill: 'FFFF00', count: 2 },
  ]),
  column('C', '', [{ fill: 'FFFF00', count: 3 }]),
]
const perSpecimen: ImportMapping = {
  headerRow: 1,
  layout: 'row-per-specimen',
  fields: { adhesive: { column: 'Adhesive' }, load: { column: 'Load', unit: 'lbf' } },
}

it('finds columns as the import does: by heading, whatever its case, by letters, by number', () => {
  expect(['Adhesive', 'load', 'c', 3, 'gone'].map((name) => columnOf(columns, name))).toEqual([0, 1, 2, 2, null])
})

describe('pointing at columns', () => {
  it('gives a field its column and keeps its unit; a column gives one thing', () => {
    const pointed = withRole(perSpecimen, columns, 2, { field: 'load', block: null })
    expect(pointed.fields.load).toEqual({ column: 'C', unit: 'lbf' })
    const changed = withRole(pointed, columns, 2, { field: 'note', block: null })
    expect(changed.fields).toEqual({ adhesive: { column: 'Adhesive' }, note: { column: 'C' } })
    expect(withRole(changed, columns, 2, null).fields).toEqual({ adhesive: { column: 'Adhesive' } })
  })

  it('keeps replicates in the order of the sheet', () => {
    const group = withLayout(perSpecimen, 'row-per-group')
    expect(group).toMatchObject({ fields: { load: { unit: 'lbf' } }, replicates: { columns: ['Load'] } })
    const more = withRole(withRole(group, columns, 1, null), columns, 2, { field: 'replicate', block: null })
    expect(withRole(more, columns, 1, { field: 'replicate', block: null }).replicates).toEqual({
      columns: ['Load', 'C'],
    })
    expect(rolesOf(more, columns)).toEqual([
      { field: 'adhesive', block: null },
      null,
      { field: 'replicate', block: null },
    ])
  })

  it('makes blocks, moves a column from one to another, and drops one from which nothing is read', () => {
    const blocks = withLayout(perSpecimen, 'blocks')
    expect(blocks.blocks).toEqual([{ load: 'Load' }])
    const two = withRole(blocks, columns, 2, { field: 'load', block: 2 })
    expect(two.blocks).toEqual([{ load: 'Load' }, { load: 'C' }])
    expect(two.fields.load).toEqual({ unit: 'lbf' })
    expect(rolesOf(two, columns)[2]).toEqual({ field: 'load', block: 2 })
    const moved = withRole(two, columns, 1, { field: 'woodFailurePercent', block: 2 })
    expect(moved.blocks).toEqual([{ load: 'C', woodFailurePercent: 'Load' }])
  })
})

it('takes a layout back to a row per specimen with its first column', () => {
  for (const layout of ['row-per-group', 'blocks'] as const)
    expect(withLayout(withLayout(perSpecimen, layout), 'row-per-specimen')).toEqual(perSpecimen)
})

it('reads replicates as strengths', () => {
  const group = withMeasured(withLayout(perSpecimen, 'row-per-group'), 'strength')
  expect(measuredOf(group)).toBe('strength')
  expect(group.fields.load).toBeUndefined()
})

it('gives a block a value of its own, and takes it back', () => {
  const blocks = withLayout(perSpecimen, 'blocks')
  const valued = withBlockValue(blocks, 0, 'exposure', 'loft')
  expect(valued.blocks).toEqual([{ load: 'Load', exposure: { value: 'loft' } }])
  expect([valueOfBlock(valued.blocks![0]!, 'exposure'), valueOfBlock(valued.blocks![0]!, 'load')]).toEqual(['loft', ''])
  expect(withBlockValue(valued, 0, 'exposure', '')).toEqual(blocks)
})

it('counts the colours of all columns of a field', () => {
  const group = withRole(withLayout(perSpecimen, 'row-per-group'), columns, 2, { field: 'replicate', block: null })
  expect(coloursOf(group, columns, 'load')).toEqual([
    { fill: 'FFFF00', count: 5 },
    { fill: null, count: 1 },
  ])
})

it('leaves out values that are still to be typed', () => {
  const typed = withSource(withSource(perSpecimen, 'wood', { value: ' ' }), 'jointType', { value: 'face' })
  expect(readyMapping(typed).fields).toEqual({ ...perSpecimen.fields, jointType: { value: 'face' } })
})
