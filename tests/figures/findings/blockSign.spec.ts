import { describe, expect, it } from 'vitest'
import type { Mark } from '#figures/drawing/mark.ts'
import { arrowOn, blockSign } from '#figures/findings/blockSign.ts'

const at = { x: 100, y: 100 }
const bands = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'band' ? [mark] : []))

describe('the sign of a block', () => {
  it('is a square about its place, filled from below as far as wood tore', () => {
    const [square, torn] = bands(blockSign({ woodFailurePercent: 25, lowerLimit: false }, at, 8, 'right'))
    expect(square).toMatchObject({ x: 96, y: 96, width: 8, height: 8 })
    expect(torn).toMatchObject({ x: 96, y: 102, width: 8, height: 2 })
  })

  it('is a circle where nobody looked', () => {
    const marks = blockSign({ woodFailurePercent: null, lowerLimit: false }, at, 8, 'up')
    expect(marks.map(({ kind }) => kind)).toEqual(['path'])
  })

  it('goes on with an arrow where it held more, from its edge to where larger strengths lie', () => {
    const tip = (onwards: 'right' | 'up') => {
      const [rule] = blockSign({ woodFailurePercent: 90, lowerLimit: true }, at, 8, onwards)
      return rule!.kind === 'rule' ? [rule!.from, rule!.to] : []
    }
    expect(tip('right')).toEqual([
      { x: 104, y: 100 },
      { x: 110, y: 100 },
    ])
    expect(tip('up')).toEqual([
      { x: 100, y: 96 },
      { x: 100, y: 90 },
    ])
  })

  it('has an arrow with two barbs', () => {
    const [, barbs] = arrowOn(at, 4, 'up')
    expect(barbs).toMatchObject({ kind: 'line', through: { length: 3 } })
  })
})
