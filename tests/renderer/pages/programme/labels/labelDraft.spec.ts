import { describe, expect, it } from 'vitest'
import { mostLabels } from '#contract/programme/labelProcedures.ts'
import { labelPlaces } from '#domain/programme/labels/sheetGeometry.ts'
import { choiceOf, firstSheet, sheetOf } from '#renderer/pages/programme/labels/labelDraft.ts'

describe('which labels', () => {
  const draft = firstSheet(null, 0)
  it('are a study that is named, or numbers that rise', () => {
    expect(choiceOf(firstSheet(4, 3), [])).toEqual({ kind: 'study', studyId: 4 })
    expect(choiceOf({ ...draft, first: ' 10 ', last: '12' }, [])).toEqual({ kind: 'numbers', first: 10, last: 12 })
  })

  it('are the specimens that are selected, in their order, up to as many as are printed at once', () => {
    expect(choiceOf(firstSheet(null, 2), [9, 4])).toEqual({ kind: 'specimens', specimenIds: [9, 4] })
    expect(choiceOf(firstSheet(null, 2), [])).toBeNull()
    expect(
      choiceOf(
        firstSheet(null, 2),
        Array.from({ length: mostLabels + 1 }, (_, at) => at + 1),
      ),
    ).toBeNull()
  })

  it('are not known while a field is empty or wrong', () => {
    expect(choiceOf({ ...draft, of: 'study' }, [])).toBeNull()
    for (const [first, last] of [
      ['', '12'],
      ['12', '10'],
      ['0', '5'],
      ['1.5', '5'],
    ] as const)
      expect(choiceOf({ ...draft, first, last }, [])).toBeNull()
  })
})

describe('the sheet', () => {
  const draft = firstSheet(1, 0)
  it('is a grid at first', () => {
    expect(sheetOf(draft)).toMatchObject({ columns: 5, rows: 13, outlined: true })
    for (const columns of ['', '0', '101', 'x']) expect(sheetOf({ ...draft, columns })).toBeNull()
  })

  it('of an own size lies in the middle of the page, or where its margins say', () => {
    const own = { ...draft, by: 'size', gapAcrossMm: '2,5' } as const
    const sheet = sheetOf(own)!
    expect([sheet.columns, sheet.rows, sheet.labelWidthMm]).toEqual([3, 7, 63.5])
    const last = labelPlaces(sheet).at(-1)!
    expect(last.xMm + 63.5).toBeCloseTo(210 - sheet.leftMm, 9)
    expect(sheetOf({ ...own, leftMm: '7', topMm: '15.1' })).toMatchObject({ leftMm: 7, topMm: 15.1 })
    for (const widthMm of ['', '0', 'wide', '2000']) expect(sheetOf({ ...own, widthMm })).toBeNull()
  })
})
