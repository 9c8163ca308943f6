import { describe, expect, it } from 'vitest'
import { paperShares, weibullPlot } from '#domain/findings/censored/weibullPlot.ts'
import type { Figure } from '#figures/drawing/figure.ts'
import { weibullFigure } from '#figures/findings/weibullFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const size = { widthPx: 600, emPx: 12 }
function draw(failed: number[], held: number[] = [], shown = strength): Figure {
  const blocks = [...failed, ...held].map((strengthMPa, i) => ({
    ...{ name: `block ${i + 1}`, strengthMPa, held: i >= failed.length },
  }))
  const plot = weibullPlot({ failed, censored: held }, paperShares, 0.95)
  return weibullFigure({ name: 'Epoxy E4', blocks, plot, confidence: 0.95 }, shown, size)
}
const some = [7, 8, 8.5, 9, 9.6, 10]
const lines = ({ marks }: Figure) =>
  marks.flatMap((mark) => (mark.kind === 'line' && mark.ink === 'curve' ? [mark] : []))

describe('weibullFigure', () => {
  it('stands failures above each other by their share, strengths by their logarithm', () => {
    const { readings } = draw([1, 10, 100])
    expect(readings[1]!.x - readings[0]!.x).toBeCloseTo(readings[2]!.x - readings[1]!.x)
    expect(readings[0]!.y).toBeGreaterThan(readings[2]!.y)
  })
  it('draws the fit as a straight line', () => {
    const [line] = lines(draw(some))
    const slopes = line!.through.slice(1).map((at, i) => (at.y - line!.through[i]!.y) / (at.x - line!.through[i]!.x))
    for (const slope of slopes) expect(slope).toBeCloseTo(slopes[0]!, 6)
  })
  it('stands bonds that outlasted the wood on one lane below all failures, by another shape', () => {
    const figure = draw(some, [9, 9.8])
    const held = figure.readings.filter(({ words }) => words.includes('then the wood failed'))
    expect(held).toHaveLength(2)
    expect(held[0]!.y).toBe(held[1]!.y)
    for (const { words, y } of figure.readings) if (words.includes('failed at')) expect(y).toBeLessThan(held[0]!.y)
    expect(figure.description).toMatch(/^Epoxy E4: 6 bonds failed, 2 bonds outlasted the wood\. Weibull of shape/)
  })
  it('lets no mark of line or band leave the frame, however wide the band', () => {
    const figure = draw([2, 9, 9.1])
    const [line] = lines(figure)
    for (const { x } of line!.through) expect(x).toBeGreaterThanOrEqual(0)
    const band = figure.marks.find((mark) => mark.kind === 'path' && mark.ink === 'shade')
    const numbers = (band as { d: string }).d.match(/[\d.-]+/g)!.map(Number)
    for (const x of numbers.filter((_, i) => i % 2 === 0)) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(size.widthPx)
    }
  })
  it('draws no line where there is none, and says why', () => {
    const figure = draw([], [8, 9])
    expect(lines(figure)).toEqual([])
    expect(figure.description).toBe(
      'Epoxy E4: 0 bonds failed, 2 bonds outlasted the wood. No bond failed, so that no line can be fitted.',
    )
    expect(figure.marks).not.toContainEqual(expect.objectContaining({ ink: 'shade' }))
  })
  it('names its axis with the unit, whatever it is', () => {
    expect(draw(some, [], quantitiesIn('US').strength).marks).toContainEqual(
      expect.objectContaining({ kind: 'text', text: 'strength, psi (logarithmic)' }),
    )
  })
})
