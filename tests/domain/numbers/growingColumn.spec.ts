import { expect, it } from 'vitest'
import { growingColumn, withRoom } from '#domain/numbers/growingColumn.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const counted = Float64Array.from({ length: 5000 }, (_, i) => i)

it.each([1, 9, 3000])('holds the values in order, however they are cut: blocks up to %i', (longest) => {
  const column = growingColumn()
  for (const [from, to] of cutStream(createRandom(longest), counted.length, longest)) column.append(counted, from, to)
  expect(column.length()).toBe(5000)
  expect(column.values()).toEqual(counted)
  expect(column.view()).toEqual(counted)
})

it('gives values that are a copy and a view that is none', () => {
  const column = growingColumn()
  for (let i = 0; i < 300; i++) column.push(i)
  const copy = column.values()
  column.view()[7] = -1
  expect([copy[7], column.values()[7]]).toEqual([7, -1])
})

it('can be shortened and go on, but not lengthened', () => {
  const column = growingColumn()
  column.append(counted, 10, 15)
  column.shorten(2)
  column.push(99)
  expect([...column.values()]).toEqual([10, 11, 99])
  expect(() => column.shorten(4)).toThrow(RangeError)
  expect(() => column.shorten(-1)).toThrow(RangeError)
})

it('makes room of twice the length at least, and only where it is wanted', () => {
  const array = Float64Array.of(1, 2, 3)
  expect(withRoom(array, 3)).toBe(array)
  expect([...withRoom(array, 4)]).toEqual([1, 2, 3, 0, 0, 0])
  expect(withRoom(array, 100).length).toBe(100)
})
