import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import type { Mark } from '#figures/drawing/mark.ts'
import { groupStrip, type StripBlock } from '#figures/findings/groupStrip.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const size = { widthPx: 600, emPx: 12 }
const block = (strengthMPa: number, change: Partial<StripBlock> = {}): StripBlock => ({
  ...{ name: `block ${strengthMPa}`, strengthMPa, lowerLimit: false, woodFailurePercent: 50 },
  ...change,
})
const draw = (blocks: StripBlock[], meanMPa: number | null = null) =>
  groupStrip([{ name: 'Hide glue', meanMPa, blocks }], strength, size)
const signs = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'named' ? [mark.marks] : []))
const filled = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === 'band' && mark.ink === 'half' ? [mark.height] : []))[0]

describe('groupStrip', () => {
  it('shows every block of every group at its strength', () => {
    const figure = draw([block(9), block(7), block(8)])
    expect(figure.readings.map(({ words }) => words)).toEqual([
      'block 7: 7.00\u00a0MPa, 50 % wood failure',
      'block 8: 8.00\u00a0MPa, 50 % wood failure',
      'block 9: 9.00\u00a0MPa, 50 % wood failure',
    ])
    const [seven, eight, nine] = figure.readings.map(({ x }) => x)
    expect(nine! - eight!).toBeCloseTo(eight! - seven!)
  })
  it('fills the square of a block as far up as wood tore', () => {
    const [none, half, all] = signs(
      draw([0, 50, 100].map((woodFailurePercent, i) => block(7 + i, { woodFailurePercent }))),
    )
    expect(filled(none!)).toBe(0)
    expect(filled(half!)).toBeCloseTo(filled(all!)! / 2)
  })
  it('tells a block that nobody assessed by another shape', () => {
    const figure = draw([block(7, { woodFailurePercent: null })])
    expect(signs(figure)[0]!.map(({ kind }) => kind)).toEqual(['path'])
    expect(figure.marks).toContainEqual(expect.objectContaining({ kind: 'text', text: 'wood failure not assessed' }))
  })
  it('draws an arrow on from what a block held at least', () => {
    const [plain, limit] = signs(draw([block(7), block(8, { lowerLimit: true })]))
    expect(limit!.length).toBeGreaterThan(plain!.length)
  })
  it('keeps blocks of one strength apart, and grows by that', () => {
    const together = draw(Array.from({ length: 5 }, () => block(7)))
    expect(new Set(together.readings.map(({ y }) => y)).size).toBe(5)
    expect(together.heightPx).toBeGreaterThan(draw([block(7)]).heightPx)
  })
  it('draws the mean only where one is given', () => {
    const means = (figure: Figure) => figure.marks.filter((mark) => mark.kind === 'rule' && mark.ink === 'mean')
    expect(means(draw([block(7), block(9)]))).toEqual([])
    const [mean] = means(draw([block(7), block(9)], 8))
    const { readings } = draw([block(7), block(9)], 8)
    expect(mean).toMatchObject({ from: { x: expect.closeTo((readings[0]!.x + readings[1]!.x) / 2) } })
  })
  it('names its axis with the unit, whatever it is', () => {
    const psi = groupStrip([{ name: 'a', meanMPa: null, blocks: [block(7)] }], quantitiesIn('US').strength, size)
    expect(psi.marks).toContainEqual(expect.objectContaining({ kind: 'text', text: 'strength, psi' }))
  })
  it('stands without any block and without any group', () => {
    expect(draw([]).marks.length).toBeGreaterThan(0)
    expect(groupStrip([], strength, size).description).toBe('There is no group.')
  })
})
