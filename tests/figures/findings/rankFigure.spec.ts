import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import { rankFigure } from '#figures/findings/rankFigure.ts'

const size = { widthPx: 600, emPx: 12 }
const group = (name: string, rank: number, low: number, high: number) => ({ name, rank, low, high, firstShare: 0.5 })
const named = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'named' ? [mark] : []))
const signs = (figure: Figure) =>
  named(figure).map(({ marks }) => marks.flatMap((mark) => (mark.kind === 'path' ? [mark.ink] : []))[0])

describe('rankFigure', () => {
  it('stands groups in the order of their places, each mark at its own', () => {
    const figure = rankFigure([group('B', 2, 1, 2), group('A', 1, 1, 2), group('C', 3, 3, 3)], size)
    expect(named(figure).map(({ words }) => words.slice(0, 1))).toEqual(['A', 'B', 'C'])
    const [a, b, c] = figure.readings.map(({ x }) => x)
    expect(c! - b!).toBeCloseTo(b! - a!)
    expect(a).toBeLessThan(b!)
  })
  it('fills the mark of every group that may be the strongest, and of no other', () => {
    const figure = rankFigure([group('A', 1, 1, 2), group('B', 2, 1, 2), group('C', 3, 3, 3)], size)
    expect(signs(figure)).toEqual(['point', 'point', 'hollow'])
  })
  it('draws the line from the first to the last place that is possible', () => {
    const [one] = named(rankFigure([group('A', 2, 1, 3), group('B', 1, 1, 3), group('C', 3, 1, 3)], size)).slice(1)
    const [span] = one!.marks
    const { readings } = rankFigure([group('A', 1, 1, 1), group('B', 2, 2, 2), group('C', 3, 3, 3)], size)
    expect(span).toMatchObject({
      kind: 'rule',
      from: { x: expect.closeTo(readings[0]!.x) },
      to: { x: expect.closeTo(readings[2]!.x) },
    })
  })
  it('names about twenty places at most', () => {
    const many = Array.from({ length: 60 }, (_, i) => group(`g${i}`, i + 1, 1, 60))
    const ticks = rankFigure(many, size).marks.filter((mark) => mark.kind === 'text' && mark.ink === 'tick')
    expect(ticks.length).toBeGreaterThan(5)
    expect(ticks.length).toBeLessThanOrEqual(21)
  })
  it('stands without a group', () => {
    expect(rankFigure([], size).description).toBe('No group can be ranked.')
  })
})
