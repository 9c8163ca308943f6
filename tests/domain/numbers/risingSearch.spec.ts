import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { firstAtOrAfter, firstWhere, lastAtOrBefore, nearestIndex } from '#domain/numbers/risingSearch.ts'

/** Rising values, some of them equal, with questions on, between and beyond them. */
function cases() {
  const random = createRandom(14)
  return Array.from({ length: 200 }, () => {
    const rising = Float64Array.from({ length: random.wholeBetween(1, 30) }, () => random.wholeBetween(0, 40)).sort()
    return { rising, wanted: random.wholeBetween(-2, 84) / 2 }
  })
}

describe('a search among rising values', () => {
  it('finds what a plain search finds', () => {
    for (const { rising, wanted } of cases()) {
      const plain = rising.findIndex((value) => value >= wanted)
      expect(firstAtOrAfter(rising, wanted)).toBe(plain < 0 ? rising.length : plain)
      expect(lastAtOrBefore(rising, wanted)).toBe(
        Math.max(
          0,
          rising.findLastIndex((value) => value <= wanted),
        ),
      )
      const distances = rising.map((value) => Math.abs(value - wanted))
      expect(distances[nearestIndex(rising, wanted)]).toBe(Math.min(...distances))
    }
  })

  it('stays within the part that it is given', () => {
    const rising = Float64Array.of(0, 1, 2, 3, 4)
    expect(lastAtOrBefore(rising, 9, 1, 3)).toBe(2)
    expect(lastAtOrBefore(rising, -9, 1, 3)).toBe(1)
    expect(firstWhere(1, 3, () => false)).toBe(3)
    expect(firstWhere(1, 3, () => true)).toBe(1)
  })

  it('takes the lower of two that are equally near, and finds none among none', () => {
    expect(nearestIndex(Float64Array.of(0, 1), 0.5)).toBe(0)
    expect(nearestIndex(new Float64Array(0), 1)).toBe(-1)
    expect(firstAtOrAfter(new Float64Array(0), 1)).toBe(0)
  })

  it('asks about as often as the number can be halved', () => {
    let asked = 0
    firstWhere(0, 1_000_000, (i) => {
      asked += 1
      return i >= 765_432
    })
    expect(asked).toBeLessThanOrEqual(20)
  })
})
