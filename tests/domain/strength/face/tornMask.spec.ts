import { expect, it } from 'vitest'
import { planeOf } from '#domain/strength/face/planes.ts'
import { isTorn, maskDigits, tornMask, tornPercent } from '#domain/strength/face/tornMask.ts'

const scores = planeOf({ width: 5, height: 2 }, (i) => 10 * i)

it('packs the pixels above a limit, the first in the highest bit', () => {
  const mask = tornMask(scores, 65)
  expect(mask).toEqual({ width: 5, height: 2, bits: Uint8Array.of(0b00000001, 0b11000000) })
  expect(maskDigits(mask)).toBe('01c0')
  expect(Array.from({ length: 10 }, (_, i) => isTorn(mask, i))).toEqual([...Array(7).fill(false), true, true, true])
})

it('counts torn wood in percent of the pixels', () => {
  expect(tornPercent(tornMask(scores, 65))).toBe(30)
  expect(tornPercent(tornMask(scores, -1))).toBe(100)
  expect(tornPercent(tornMask(scores, 90))).toBe(0)
})
