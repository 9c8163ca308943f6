import { describe, expect, it } from 'vitest'
import { lanesOf } from '#figures/findings/lanes.ts'

describe('lanesOf', () => {
  it('keeps all in the middle that have room', () => {
    expect(lanesOf([0, 10, 20], 10)).toEqual([0, 0, 0])
  })
  it('goes above and below in turn, and back to the middle as soon as there is room', () => {
    expect(lanesOf([0, 1, 2, 3, 4, 10], 10)).toEqual([0, -1, 1, -2, 2, 0])
  })
  it('refuses places that fall', () => {
    expect(() => lanesOf([2, 1], 10)).toThrow(RangeError)
  })
})
