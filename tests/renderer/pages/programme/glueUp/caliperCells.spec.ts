import { expect, it } from 'vitest'
import {
  areaOf,
  type CaliperCells,
  cellAfter,
  cellKey,
  doubtsAbout,
  doubtsIn,
  isOfNextCell,
  isUnread,
  shownIn,
  sizeIn,
} from '#renderer/pages/programme/glueUp/caliperCells.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const cells = (entries: Record<string, string>, typedIn: 'SI' | 'US' = 'SI'): CaliperCells =>
  Object.fromEntries(Object.entries(entries).map(([key, text]) => [key, { text, typedIn }]))

it('reads both sides of a block in the unit in which they were typed', () => {
  // NIST SP 811: 1 in = 25.4 mm
  expect(sizeIn(cells({ 'a length': '1 1/4', 'a width': '3/4' }, 'US'), 'a')).toEqual({
    lengthMm: 31.75,
    widthMm: 19.05,
  })
  expect(sizeIn(cells({ 'a length': '30,5', 'b width': '20' }), 'a')).toEqual({ lengthMm: 30.5, widthMm: null })
})

it('shows a size in the units of now, and one with its own unit as it was typed', () => {
  expect(shownIn({ text: '1.25', typedIn: 'US' }, quantitiesIn('SI'))).toBe('31.75')
  expect(shownIn({ text: '30 mm', typedIn: 'SI' }, quantitiesIn('US'))).toBe('30 mm')
  expect(shownIn(undefined, quantitiesIn('SI'))).toBe('')
})

it('multiplies length and width, as EN 205 and ASTM D905 do for the area of a lap', () => {
  // Common practice: an overlap of 1 in x 3/4 in has 0.75 in2; NIST SP 811: 1 in2 = 645.16 mm2
  expect(areaOf({ lengthMm: 25.4, widthMm: 19.05 })).toBe(483.87)
  expect(areaOf({ lengthMm: 30.1, widthMm: 19.9 })).toBe(598.99)
  expect(areaOf({ lengthMm: 30, widthMm: null })).toBeNull()
})

it('knows what is no length, and takes it for no size', () => {
  const some = cells({ 'a length': 'thirty', 'b width': '20' })
  expect([isUnread(some, 'a'), isUnread(some, 'b'), isUnread(some, 'c')]).toEqual([true, false, false])
  expect(sizeIn(some, 'a')).toEqual({ lengthMm: null, widthMm: null })
})

it('asks about the side that was just measured, and about both in each other’s place once the width is there', () => {
  const planned = { lengthMm: 30, widthMm: 20 }
  const about = (entries: Record<string, string>, side: 'length' | 'width') =>
    doubtsAbout(doubtsIn(cells(entries), ['a'], planned)[0]!, side).map(({ kind }) => kind)
  expect(about({ 'a length': '300' }, 'length')).toEqual(['decimal-point'])
  expect(about({ 'a length': '30' }, 'length')).toEqual([])
  expect(about({ 'a length': '20', 'a width': '30' }, 'width')).toEqual(['swapped'])
  expect(about({ 'a length': '20', 'a width': '30' }, 'length')).toEqual([])
})

it('goes from length to width to the next block, and nowhere after the last', () => {
  expect(cellAfter(['a', 'b'], 'a', 'length')).toEqual({ blockKey: 'a', side: 'width' })
  expect(cellAfter(['a', 'b'], 'a', 'width')).toEqual({ blockKey: 'b', side: 'length' })
  expect(cellAfter(['a', 'b'], 'b', 'width')).toBeNull()
  expect(cellKey('a', 'width')).toBe('a width')
})

it('takes a value that fits the next cell alone, after a doubtful one, for that of the next cell', () => {
  const planned = { lengthMm: 30, widthMm: 20 }
  const length = { blockKey: 'a', side: 'length' } as const
  const width = { blockKey: 'a', side: 'width' } as const
  const of = (entries: Record<string, string>, here: typeof length | typeof width, text: string) =>
    isOfNextCell(cells(entries), ['a', 'b'], planned, here, { text, typedIn: 'SI' })
  expect(of({ 'a length': '301' }, length, '19.9')).toBe(true)
  expect(of({ 'a length': '30.1', 'a width': 'abc' }, width, '30.2')).toBe(true)
  // Measured again, wrong again, and nothing to go on to
  expect(of({ 'a length': '301' }, length, '30.1')).toBe(false)
  expect(of({ 'a length': '301' }, length, '200')).toBe(false)
  expect(of({ 'a length': '301' }, length, 'abc')).toBe(false)
  // A block that lies turned, said once more
  expect(of({ 'a length': '20' }, length, '20')).toBe(false)
  expect(isOfNextCell({}, ['a'], planned, width, { text: '30.2', typedIn: 'SI' })).toBe(false)
})
