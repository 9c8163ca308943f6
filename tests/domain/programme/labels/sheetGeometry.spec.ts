import { describe, expect, it } from 'vitest'
import {
  codeSideMm,
  labelPlaces,
  leastCodeMm,
  sheetFault,
  sheetOfGrid,
  sheetOfSize,
} from '#domain/programme/labels/sheetGeometry.ts'

it('fills the page with columns and rows', () => {
  const sheet = sheetOfGrid('A4', 5, 13)
  const places = labelPlaces(sheet)
  expect(places).toHaveLength(65)
  expect(places[0]).toEqual({ xMm: sheet.leftMm, yMm: sheet.topMm })
  expect(places.at(-1)!.xMm + sheet.labelWidthMm).toBeCloseTo(210 - sheet.leftMm, 10)
  expect(places.at(-1)!.yMm + sheet.labelHeightMm).toBeCloseTo(297 - sheet.topMm, 10)
  expect(sheetFault(sheet)).toBeNull()
})

it('goes along a row before it goes down, with the gaps between labels', () => {
  const sheet = {
    ...sheetOfSize('A4', 50, 30),
    columns: 3,
    rows: 4,
    leftMm: 10,
    topMm: 20,
    gapAcrossMm: 2,
    gapDownMm: 3,
  }
  expect(labelPlaces(sheet).slice(0, 4)).toEqual([
    { xMm: 10, yMm: 20 },
    { xMm: 62, yMm: 20 },
    { xMm: 114, yMm: 20 },
    { xMm: 10, yMm: 53 },
  ])
})

it('lays as many labels of an own size on the page as fit, in its middle', () => {
  const sheet = sheetOfSize('A4', 63.5, 38)
  expect([sheet.columns, sheet.rows]).toEqual([3, 7])
  expect(sheet.leftMm).toBeCloseTo((210 - 3 * 63.5) / 2, 10)
  expect(sheet.topMm).toBeCloseTo((297 - 7 * 38) / 2, 10)
})

describe('a sheet that cannot be printed', () => {
  const sheet = sheetOfGrid('A4', 5, 13)
  it.each([
    ['too-wide', { ...sheet, gapAcrossMm: 0.5 * 5 }, null],
    ['too-wide', { ...sheet, gapAcrossMm: 2 }, 'too-wide'],
    ['too-high', { ...sheet, topMm: 25 }, 'too-high'],
    ['too-small', sheetOfGrid('A4', 9, 13), 'too-small'],
    ['too-small', sheetOfGrid('A4', 5, 24), 'too-small'],
    ['too-wide', sheetOfSize('A4', 300, 40), 'too-wide'],
  ] as const)('is %s', (_name, changed, fault) => {
    if (fault === null) expect(sheetFault({ ...changed, gapAcrossMm: 0.02 })).toBeNull()
    else expect(sheetFault(changed)).toBe(fault)
  })
})

it('gives a code of 8 mm at least to every label that is large enough', () => {
  const sheet = sheetOfSize('A4', 25, 12.5)
  expect(sheetFault(sheet)).toBeNull()
  expect((codeSideMm(sheet) * 21) / 29).toBeGreaterThanOrEqual(leastCodeMm)
})
