import { expect, it } from 'vitest'
import { onceForEach } from '#domain/numbers/onceForEach.ts'

it('works out what it was not asked before, and nothing twice', () => {
  const asked: (readonly number[])[] = []
  const difference = onceForEach((one: number, other: number) => {
    asked.push([one, other])
    return one - other
  })
  expect([difference(3, 1), difference(1, 3), difference(31, 1), difference(3, 1), difference(1, 3)]).toEqual([
    2, -2, 30, 2, -2,
  ])
  expect(asked).toEqual([
    [3, 1],
    [1, 3],
    [31, 1],
  ])
})

it('keeps nothing of what it threw at', () => {
  let given = 0
  const positive = onceForEach((value: number) => {
    given += 1
    if (value < 0) throw new RangeError('negative')
    return value
  })
  expect(() => positive(-1)).toThrow(RangeError)
  expect(() => positive(-1)).toThrow(RangeError)
  expect(given).toBe(2)
})
