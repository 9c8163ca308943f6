import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import { type PlotRow, rowPlot, spanKey } from '#figures/points/rowPlot.ts'

const size = { widthPx: 400, emPx: 12 }
const row = (change: Partial<PlotRow> = {}): PlotRow => ({
  ...{ name: 'Epoxy E4', value: 5, low: 4, high: 7, hollow: false, words: 'E4: 5' },
  ...change,
})
const draw = (rows: PlotRow[], heldAgainst: number | null = null) =>
  rowPlot(
    {
      ...{ title: 'Rows', description: '', rows, xTitle: 'value', heldAgainst, keys: [spanKey('interval', 12)] },
      x: { from: 0, to: 10, ticks: [0, 5, 10].map((value) => ({ value, label: String(value) })) },
    },
    size,
  )
const named = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'named' ? [mark] : []))

describe('rowPlot', () => {
  it('stands each value below the one before, at its place', () => {
    const { readings } = draw([row(), row({ value: 10 })])
    expect(readings[1]!.y).toBeGreaterThan(readings[0]!.y)
    expect(readings[1]!.x).toBeGreaterThan(readings[0]!.x)
  })
  it('draws an interval only where there is one', () => {
    expect(named(draw([row()]))[0]!.marks.filter(({ kind }) => kind === 'rule')).toHaveLength(3)
    expect(named(draw([row({ high: null })]))[0]!.marks.filter(({ kind }) => kind === 'rule')).toHaveLength(0)
  })
  it('draws the line that values are held against at its place', () => {
    const zero = ({ marks }: Figure) =>
      marks.flatMap((mark) => (mark.kind === 'rule' && mark.ink === 'zero' ? [mark] : []))
    const figure = draw([row()], 5)
    expect(zero(figure)[0]!.from.x).toBeCloseTo(figure.readings[0]!.x)
    expect(zero(draw([row()]))).toEqual([])
  })
  it('grows by a name of several lines', () => {
    expect(draw([row({ name: 'long words '.repeat(20) })]).heightPx).toBeGreaterThan(draw([row()]).heightPx)
  })
})
