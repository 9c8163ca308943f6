import { describe, expect, it } from 'vitest'
import type { CurveScene } from '#figures/breaks/curveScene.ts'
import { type LoadCurve, loadCurveFigure } from '#figures/breaks/loadCurveFigure.ts'
import type { Figure } from '#figures/drawing/figure.ts'

const size = { widthPx: 600, emPx: 12 }
const scene = (change: Partial<CurveScene> = {}): CurveScene => ({
  ...{ levels: [], spans: [], gaps: [], band: null, line: null },
  marks: [
    { timeS: 4, value: 40, label: 'pop-in', shape: 'event' },
    { timeS: 9, value: 90, label: 'peak 90 N', shape: 'peak' },
    { timeS: 1, value: 0, label: 'start of loading', shape: 'onset' },
  ],
  ...change,
})
const curve = {
  timeS: Float64Array.from({ length: 101 }, (_, index) => index / 10),
  force: Float64Array.from({ length: 101 }, (_, index) => (index <= 90 ? index : 2)),
}
const draw = (change: Partial<LoadCurve> = {}) =>
  loadCurveFigure(
    { title: 'Load', curve, scene: scene(), shown: { name: 'load', unit: 'N', factor: 1 }, heightEm: 24, ...change },
    size,
  )
const inks = ({ marks }: Figure) => marks.map((mark) => ('ink' in mark ? mark.ink : mark.kind))
const texts = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const lines = ({ marks }: Figure) => marks.flatMap((mark) => (mark.kind === 'line' ? [mark.through] : []))

describe('loadCurveFigure', () => {
  it('names every mark beside the curve and tells them in order of time', () => {
    const figure = draw()
    expect(texts(figure)).toEqual(expect.arrayContaining(['pop-in', 'peak 90 N', 'start of loading']))
    expect(figure.readings.map(({ words }) => words)).toEqual([
      'start of loading, 1.00 s',
      'pop-in, 4.00 s',
      'peak 90 N, 9.00 s',
    ])
    expect(figure.description).toContain('peak 90 N at 9.00 s')
  })
  it('stands the mark of the peak on the highest point of the line', () => {
    const figure = draw()
    const [line] = lines(figure)
    expect(figure.readings.at(-1)!.y).toBeCloseTo(Math.min(...line!.map(({ y }) => y)))
  })
  it('draws no line where samples are missing, and shades the place', () => {
    const gaps = [{ fromS: 3, toS: 5 }]
    const kept = [...curve.timeS.keys()].filter((index) => curve.timeS[index]! <= 3 || curve.timeS[index]! >= 5)
    const pick = (values: Float64Array) => Float64Array.from(kept, (index) => values[index]!)
    const figure = draw({ curve: { timeS: pick(curve.timeS), force: pick(curve.force) }, scene: scene({ gaps }) })
    expect(lines(figure)).toHaveLength(2)
    expect(inks(figure)).toContain('gap')
    expect(texts(figure)).toContain('samples are missing')
  })
  it('shows readings as they came where there is no scale, and loads in the chosen unit', () => {
    const counts = draw({ shown: { name: 'reading', unit: 'counts', factor: 1 } })
    expect(texts(counts)).toContain('reading, counts')
    const pounds = draw({ shown: { name: 'load', unit: 'lbf', factor: 0.1 } })
    expect(texts(pounds)).toContain('load, lbf')
    expect(texts(pounds)).not.toContain('80')
  })
  it('draws the rated load only where the curve comes near it', () => {
    const levels = (value: number) => scene({ levels: [{ value, label: 'rated load', kind: 'alarm' }] })
    expect(inks(draw({ scene: levels(95) }))).toContain('rated')
    expect(inks(draw({ scene: levels(950) }))).not.toContain('rated')
  })
  it('ends the line through the straight part at the edge of the plot', () => {
    const line = { fromS: 0.5, fromValue: 0, toS: 19.5, toValue: 90, label: 'through the straight part' }
    const figure = draw({ scene: scene({ line }) })
    const seated = figure.marks.find((mark) => mark.kind === 'rule' && mark.ink === 'seated')
    const right = Math.max(...lines(figure)[0]!.map(({ x }) => x))
    expect(seated).toMatchObject({ to: { x: expect.closeTo(right, 3) } })
    expect(texts(figure)).toContain('through the straight part')
  })
  it('shades what lasted and the noise at rest, and says below what the shades are', () => {
    const band = { fromS: 0, toS: 1, value: 0, halfWidth: 0.5, label: 'zero, noise SD 0.5 N' }
    const figure = draw({ scene: scene({ band, spans: [{ fromS: 4, toS: 5, chosen: false }] }) })
    expect(inks(figure)).toEqual(expect.arrayContaining(['rest', 'span']))
    expect(texts(figure)).toEqual(expect.arrayContaining(['zero, noise SD 0.5 N', 'while an event lasted']))
  })
  it('tells the rest from what lasted by the form of their signs, not by their shades alone', () => {
    const band = { fromS: 0, toS: 1, value: 0, halfWidth: 0.5, label: 'zero' }
    const { marks, heightPx } = draw({ scene: scene({ band, spans: [{ fromS: 4, toS: 5, chosen: false }] }) })
    const signs = marks.flatMap((mark) => (mark.kind === 'band' && mark.y > heightPx - 30 ? [mark] : []))
    const heightOf = (ink: string) => signs.find((sign) => sign.ink === ink)!.height
    expect(heightOf('rest')).toBeLessThan(heightOf('span') / 2)
  })
  it('tells a person’s word from a peak by a ring', () => {
    const marks = [{ timeS: 5, value: 50, label: 'picked by hand 50 N', shape: 'word' as const }]
    const named = draw({ scene: scene({ marks }) }).marks.find((mark) => mark.kind === 'named')
    expect(named).toMatchObject({ marks: [{ kind: 'circle' }, { kind: 'path' }] })
  })
  it('draws axes alone for a curve without samples', () => {
    const nothing = { timeS: new Float64Array(), force: new Float64Array() }
    expect(lines(draw({ curve: nothing, scene: scene({ marks: [] }) }))).toEqual([])
  })
})
