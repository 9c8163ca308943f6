import { describe, expect, it } from 'vitest'
import { overlap } from '#figures/axes/labelPlace.ts'
import type { Mark } from '#figures/drawing/mark.ts'
import { textWidth } from '#figures/drawing/textWidth.ts'
import { type PointPlot, pointPlot } from '#figures/points/pointPlot.ts'

const size = { widthPx: 400, emPx: 12 }
const plot = (change: Partial<PointPlot> = {}): PointPlot => ({
  title: 'Deviations',
  description: '',
  points: [2, -3, 1].map((y, x) => ({ x, y, shape: 'circle', words: `check ${x + 1}` })),
  levels: [],
  xTitle: 'check',
  yTitle: 'read minus expected, N',
  heightEm: 18,
  ...change,
})
const texts = (marks: readonly Mark[], ink: string) =>
  marks.flatMap((mark) => (mark.kind === 'text' && mark.ink === ink ? [mark] : []))

describe('pointPlot', () => {
  it('lets every point be read, in order, where it is drawn', () => {
    const { readings } = pointPlot(plot(), size)
    expect(readings.map(({ words }) => words)).toEqual(['check 1', 'check 2', 'check 3'])
    expect(readings[1]!.y).toBeGreaterThan(readings[2]!.y)
    expect(readings[1]!.x).toBeLessThan(readings[2]!.x)
  })
  it('rings the points that call for attention', () => {
    const points = plot().points.map((point, index) => ({ ...point, ringed: index === 1 }))
    const rings = pointPlot(plot({ points }), size).marks.filter(
      (mark) => mark.kind === 'named' && mark.marks.some(({ kind }) => kind === 'circle'),
    )
    expect(rings).toMatchObject([{ words: 'check 2' }])
  })
  it('joins points only where it is asked to', () => {
    const lines = (joined: boolean) => pointPlot(plot({ joined }), size).marks.filter(({ kind }) => kind === 'line')
    expect(lines(false)).toEqual([])
    expect(lines(true)).toHaveLength(1)
  })
  it('keeps the names of levels that lie close together apart', () => {
    const levels = [0.1, 0.15, 0.2, 0.25].map((y) => ({ y, name: `limit ${y}`, ink: 'limit' as const }))
    const boxes = texts(pointPlot(plot({ levels }), size).marks, 'label').map(({ x, y, text }) => ({
      x: x - textWidth(text, 12),
      y: y - 9,
      width: textWidth(text, 12),
      height: 12,
    }))
    expect(boxes).toHaveLength(4)
    for (const [index, box] of boxes.entries())
      for (const other of boxes.slice(index + 1)) expect(overlap(box, other)).toBe(false)
  })
  it('writes names below in place of numbers', () => {
    const { marks } = pointPlot(plot({ xNames: ['9', '10', '11'] }), size)
    expect(texts(marks, 'tick').map(({ text }) => text)).toEqual(expect.arrayContaining(['9', '10', '11']))
  })
  it('grows by the height of its keys', () => {
    const keys = [{ name: 'run 1', sign: null }]
    expect(pointPlot(plot({ keys }), size).heightPx).toBeGreaterThan(pointPlot(plot(), size).heightPx)
  })
  it('draws its axes where there is no point', () => {
    expect(pointPlot(plot({ points: [] }), size).marks.length).toBeGreaterThan(4)
  })
})
