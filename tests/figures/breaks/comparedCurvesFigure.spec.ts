import { describe, expect, it } from 'vitest'
import { comparedCurvesFigure } from '#figures/breaks/comparedCurvesFigure.ts'
import type { Figure } from '#figures/drawing/figure.ts'
import type { Mark } from '#figures/drawing/mark.ts'
import { madeCompared, madeOverlaid } from './madeCompared.ts'

const size = { widthPx: 700, emPx: 12.5 }
const draw = (curves: ReturnType<typeof madeOverlaid>[], change: Partial<ReturnType<typeof madeCompared>> = {}) =>
  comparedCurvesFigure({ ...madeCompared('C1', 0), curves, ...change }, size)
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.kind === 'named' || mark.kind === 'moved' ? flat(mark.marks) : [mark]))
const texts = ({ marks }: Figure) => flat(marks).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const lines = ({ marks }: Figure, ink: string) =>
  flat(marks).flatMap((mark) => (mark.kind === 'line' && mark.ink === ink ? [mark.through] : []))
const rules = ({ marks }: Figure, ink: string) => flat(marks).filter((mark) => mark.kind === 'rule' && mark.ink === ink)

describe('comparedCurvesFigure', () => {
  it('lays every curve where its own origin and units put it', () => {
    const one = madeOverlaid('A', 3000, 11)
    const other = madeOverlaid('B', 1500, 21, { originS: 1, timeUnit: 2, forceUnit: 0.5 })
    const [a, b] = lines(draw([one, other]), 'overlaid').map((through) =>
      through.reduce((highest, at) => (at.y < highest.y ? at : highest)),
    )
    // Samples of the two curves lie a little apart
    expect(Math.abs(a!.x - b!.x)).toBeLessThan(8)
    expect(Math.abs(a!.y - b!.y)).toBeLessThan(8)
  })
  it('tells those set aside, outlying and chosen apart by their lines, and says below what the lines are', () => {
    const figure = comparedCurvesFigure(madeCompared('C1', 12), size)
    expect(lines(figure, 'overlaid')).toHaveLength(9)
    for (const ink of ['aside', 'outlying', 'foremost', 'mean']) expect(lines(figure, ink)).toHaveLength(1)
    const named = ['a break', 'median', 'quartiles', 'set aside', 'outlying', 'C1 4']
    expect(texts(figure)).toEqual(expect.arrayContaining(named))
    expect(rules(figure, 'aside')).toHaveLength(1)
    const plain = draw([madeOverlaid('A', 3000, 11)])
    for (const name of named.slice(1)) expect(texts(plain)).not.toContain(name)
  })
  it('draws the chosen one over the median', () => {
    const inks = flat(comparedCurvesFigure(madeCompared('C1', 12), size).marks).flatMap((mark) =>
      mark.kind === 'line' ? [mark.ink] : [],
    )
    expect(inks.lastIndexOf('foremost')).toBeGreaterThan(inks.lastIndexOf('mean'))
    expect(inks.indexOf('mean')).toBeGreaterThan(inks.lastIndexOf('outlying'))
  })
  it('names all where they are few, else the chosen one and those that stand out', () => {
    expect(texts(draw([madeOverlaid('A', 3000, 11), madeOverlaid('B', 2000, 9)]))).toEqual(
      expect.arrayContaining(['A', 'B']),
    )
    const many = texts(comparedCurvesFigure(madeCompared('C1', 12), size))
    expect(many.filter((text) => text.startsWith('C1 '))).toEqual(['C1 4', 'C1 3: 540 N below the median C1', 'C1 4'])
  })
  it('puts the sign of what stands out on its own curve', () => {
    const outlying = { at: 5, words: '540 N below the median' }
    const [reading] = draw([madeOverlaid('A', 3000, 11, { outlying })]).readings
    const [through] = lines(draw([madeOverlaid('A', 3000, 11, { outlying })]), 'outlying')
    const beside = through!.reduce((nearest, at) =>
      Math.abs(at.x - reading!.x) < Math.abs(nearest.x - reading!.x) ? at : nearest,
    )
    expect(reading!.words).toBe('A: 540 N below the median')
    expect(Math.abs(beside.y - reading!.y)).toBeLessThan(3)
  })
  it('draws no line where samples are missing', () =>
    expect(lines(draw([madeOverlaid('A', 3000, 11, { gaps: [{ fromS: 4, toS: 5 }] })]), 'overlaid')).toHaveLength(2))
  it('shows loads in the chosen unit', () =>
    expect(texts(draw([madeOverlaid('A', 3000, 11)], { factor: 0.1 }))).not.toContain('3000'))
  it('keeps a file of hundreds of long curves small', () => {
    const timeS = Float64Array.from({ length: 20_000 }, (_, i) => i / 1000)
    const long = { timeS, force: timeS.map((time) => 100 * Math.sin(time)) }
    const figure = draw(Array.from({ length: 200 }, (_, i) => madeOverlaid(`B ${i}`, 1, 2, { curve: long })))
    const points = lines(figure, 'overlaid').reduce((sum, through) => sum + through.length, 0)
    expect(points).toBeLessThanOrEqual(160_000)
    expect(points).toBeGreaterThan(100_000)
  })
  it('draws axes alone for no curve and for one without samples', () => {
    const nothing = { timeS: new Float64Array(), force: new Float64Array() }
    expect(lines(draw([]), 'overlaid')).toEqual([])
    expect(lines(draw([madeOverlaid('A', 1, 2, { curve: nothing })]), 'overlaid')).toEqual([])
  })
})
