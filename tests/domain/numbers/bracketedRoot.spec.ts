import { describe, expect, it } from 'vitest'
import { bracketedRoot } from '#domain/numbers/bracketedRoot.ts'

describe('root between two points', () => {
  it('finds roots known in closed form to the last digits', () => {
    expect(bracketedRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15)
    expect(bracketedRoot(Math.cos, 1, 2)).toBeCloseTo(Math.PI / 2, 15)
    expect(bracketedRoot((x) => x ** 3 - 1e-9, -1, 4)).toBeCloseTo(1e-3, 12)
  })

  it('gives an end that is itself the root', () => {
    expect(bracketedRoot((x) => x - 3, 3, 9)).toBe(3)
    expect(bracketedRoot((x) => x - 9, 3, 9)).toBe(9)
  })

  it('ends on a function that is flat but for one jump', () => {
    expect(bracketedRoot((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 12)
  })

  it('refuses ends of the same sign', () => {
    expect(() => bracketedRoot((x) => x * x + 1, -1, 1)).toThrow(RangeError)
  })
})
