import { describe, expect, it } from 'vitest'
import { type MeasuredSize, sizeDoubts } from '#domain/programme/glueUp/sizeDoubts.ts'

const planned = { lengthMm: 30, widthMm: 20 }
const size = (lengthMm: number | null, widthMm: number | null): MeasuredSize => ({ lengthMm, widthMm })
const kinds = (sizes: MeasuredSize[], plan: MeasuredSize = planned) =>
  sizeDoubts(sizes, plan).map((doubts) => doubts.map(({ kind }) => kind))

describe('the sizes of a glue-up', () => {
  it('are taken without a word where they are what a saw makes of the plan', () =>
    expect(kinds([size(30.1, 19.95), size(29.8, 20.05), size(null, null)])).toEqual([[], [], []]))

  it('are asked about where a point is at the wrong place, with what they would be', () => {
    expect(sizeDoubts([size(302, 2.01)], planned)[0]).toEqual([
      { kind: 'decimal-point', side: 'length', mm: 302, expectedMm: 30, instead: 30.2 },
      { kind: 'decimal-point', side: 'width', mm: 2.01, expectedMm: 20, instead: expect.closeTo(20.1, 9) },
    ])
  })

  it('are asked about where they are inches in a field of millimetres, or the reverse', () => {
    // NIST SP 811: 1 in = 25.4 mm
    expect(sizeDoubts([size(1.18, 20)], planned)[0]).toEqual([
      { kind: 'other-unit', side: 'length', mm: 1.18, expectedMm: 30, instead: expect.closeTo(29.972, 9) },
    ])
    expect(kinds([size(762, 20)])).toEqual([['other-unit']])
  })

  it('are asked about where length and width stand in each other’s place', () =>
    expect(kinds([size(20.1, 29.9), size(30, 20)])).toEqual([['swapped'], []]))

  it('are not taken for swapped where both sides are all but equal', () =>
    expect(kinds([size(21, 20)], { lengthMm: 20, widthMm: 21 })).toEqual([[]]))

  it('are asked about where they are far from the plan for no such reason', () =>
    expect(kinds([size(36, 20), size(30, 14)])).toEqual([['far'], ['far']]))

  it('are held against the others where nothing was planned', () => {
    const others = [30, 30.1, 29.9, 30, 30.2].map((mm) => size(mm, 20))
    expect(kinds([...others, size(3, 20)], size(null, null)).at(-1)).toEqual(['decimal-point'])
    expect(kinds(others.slice(0, 3), size(null, null))).toEqual([[], [], []])
  })

  it('are pointed out beyond a modified z score of 3.5 among the others', () => {
    // R 4.5: x <- c(29.9, 30, 30.1, 30.2, 30.3, 30.4, m); 0.6745 * (m - median(x)) / mad(x, constant = 1)
    //   m = 31.2: 3.3725, m = 31.3: 3.70975
    const lengths = [29.9, 30, 30.1, 30.2, 30.3, 30.4]
    const last = (mm: number) => kinds([...lengths, mm].map((one) => size(one, 20))).at(-1)
    expect(last(31.2)).toEqual([])
    expect(last(31.3)).toEqual(['outlying'])
  })

  it('are not pointed out for less than 2 % where all others are equal', () => {
    const equal = Array.from({ length: 8 }, () => size(30, 20))
    expect(kinds([...equal, size(30.5, 20)]).at(-1)).toEqual([])
    expect(kinds([...equal, size(30.7, 20)]).at(-1)).toEqual(['outlying'])
  })

  it('want the other side of a block that was measured on one alone', () =>
    expect(sizeDoubts([size(30, null)], planned)).toEqual([[{ kind: 'side-missing', side: 'width' }]]))
})
