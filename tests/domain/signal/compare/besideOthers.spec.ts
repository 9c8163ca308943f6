import { describe, expect, it } from 'vitest'
import { besideOthers } from '#domain/signal/compare/besideOthers.ts'

describe('a figure beside that of others', () => {
  // Median of 400, 300, 250 and 200: (250 + 300) / 2 = 275; a fifth of it is 55.
  const others = [400, null, 200, 300, 250]

  it('is told with their median where it lies more than a fifth of that away', () => {
    expect(besideOthers(331, others)).toEqual({ own: 331, usual: 275 })
    expect(besideOthers(219, others)).toEqual({ own: 219, usual: 275 })
  })
  it('is not told where it lies nearer', () => {
    expect(besideOthers(330, others)).toBeNull()
    expect(besideOthers(220, others)).toBeNull()
  })
  it('is not told among fewer than four others, or where it is not known itself', () => {
    expect(besideOthers(900, [1, 2, 3, null])).toBeNull()
    expect(besideOthers(null, others)).toBeNull()
  })
})
