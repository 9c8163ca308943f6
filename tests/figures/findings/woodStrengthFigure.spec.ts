import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import { type WoodStrengthBlock, woodStrengthFigure } from '#figures/findings/woodStrengthFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const size = { widthPx: 600, emPx: 12 }
const block = (strengthMPa: number, woodFailurePercent: number | null, jointType = 'face'): WoodStrengthBlock => ({
  ...{ name: `block ${strengthMPa}`, jointType, strengthMPa, woodFailurePercent },
})
const draw = (...blocks: WoodStrengthBlock[]) => woodStrengthFigure(blocks, 75, strength, size)
const paths = ({ marks }: Figure) =>
  marks.flatMap((mark) =>
    mark.kind === 'named' ? mark.marks.flatMap((one) => (one.kind === 'path' ? [one] : [])) : [],
  )
/** The outline of a path without its place. */
const shapeOf = (d: string) => d.replace(/[-\d. ]+/g, '')

describe('woodStrengthFigure', () => {
  it('stands every assessed block at its strength and its torn wood', () => {
    const { readings } = draw(block(8, 0), block(9, 50), block(10, 100))
    expect(readings[1]!.x - readings[0]!.x).toBeCloseTo(readings[2]!.x - readings[1]!.x)
    expect(readings[0]!.y - readings[1]!.y).toBeCloseTo(readings[1]!.y - readings[2]!.y)
    expect(readings[2]!.y).toBeLessThan(readings[0]!.y)
  })
  it('fills a block from the limit on, the limit included', () => {
    expect(paths(draw(block(8, 70), block(9, 75))).map(({ ink }) => ink)).toEqual(['hollow', 'point'])
  })
  it('tells joint types apart by shape, and names them only where there are several', () => {
    const several = draw(block(8, 0, 'face'), block(9, 0, 'scarf'))
    const [face, scarf] = paths(several).map(({ d }) => shapeOf(d))
    expect(face).not.toBe(scarf)
    const texts = (figure: Figure) => figure.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    expect(texts(several)).toEqual(expect.arrayContaining(['face', 'scarf']))
    expect(texts(draw(block(8, 0, 'face')))).not.toContain('face')
    expect(texts(draw(block(8, 0, ''), block(9, 0, 'scarf')))).toContain('joint type not named')
  })
  it('lets the last shape stand for all joint types beyond the shapes', () => {
    const figure = draw(...['a', 'b', 'c', 'd', 'e'].map((joint, i) => block(8 + i, 0, joint)))
    const shapes = paths(figure).map(({ d }) => shapeOf(d))
    expect(shapes[3]).toBe(shapes[4])
    expect(figure.marks).toContainEqual(expect.objectContaining({ kind: 'text', text: 'other joint types' }))
  })
  it('says how many blocks were not assessed instead of drawing them', () => {
    const figure = draw(block(8, null), block(9, 10))
    expect(figure.readings).toHaveLength(1)
    expect(figure.description).toMatch(/1 block without an assessed wood failure is not drawn/)
  })
  it('stands without a block', () => {
    expect(draw().description).toBe('No block failed in the wood (75 % or more). No block failed in the bond.')
  })
})
