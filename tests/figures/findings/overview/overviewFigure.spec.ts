import { describe, expect, it } from 'vitest'
import type { GroupBlock, OverviewGroup } from '#domain/findings/overview/overviewGroups.ts'
import { inkAttributes } from '#figures/drawing/ink.ts'
import { brokenForm, unbrokenForm } from '#figures/findings/overview/blockForms.ts'
import { blockMarks, sceneOf } from '#figures/findings/overview/blockScene.ts'
import { overviewFigure } from '#figures/findings/overview/overviewFigure.ts'
import { overviewKeys } from '#figures/findings/overview/overviewKeys.ts'
import { stepsBetween } from '#figures/findings/overview/strengthSteps.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const quantities = quantitiesIn('SI')
const size = { widthPx: 900, emPx: 12 }
const block = (strengthMPa: number | null, change: Partial<GroupBlock> = {}): GroupBlock => ({
  ...{ number: '', specimenId: 1, breakId: 1, state: 'curve', strengthMPa, woodFailurePercent: 0 },
  ...change,
})
const unbroken = (state: GroupBlock['state']) => block(null, { state, woodFailurePercent: null })
const group = (blocks: readonly GroupBlock[], change: Partial<OverviewGroup> = {}): OverviewGroup => ({
  ...{ adhesive: 'casein C1', jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 0, blocks },
  ...change,
})
const draw = (blocks: readonly GroupBlock[]) => overviewFigure([group(blocks)], quantities, size)
const inks = ({ marks }: ReturnType<typeof draw>) => new Set(marks.map((mark) => ('ink' in mark ? mark.ink : '')))
/** Where the forms of a path begin. */
const starts = (d: string) =>
  [...d.matchAll(/M(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }))

describe('stepsBetween', () => {
  it('divides a stretch into steps of one width, whose ends hold what lies beyond', () => {
    const { bounds, stepOf } = stepsBetween(4, 10)
    expect(bounds).toEqual([4, 5, 6, 7, 8, 9, 10])
    expect([3, 4, 4.99, 5, 9.5, 10, 11].map(stepOf)).toEqual([0, 0, 0, 1, 5, 5, 5])
  })
  it('throws for a stretch that is none', () => {
    expect(() => stepsBetween(4, 4)).toThrow(RangeError)
    expect(() => stepsBetween(Number.NaN, 4)).toThrow(RangeError)
  })
})

describe('the form of a block', () => {
  const at = { x: 10, y: 10 }
  const broken = (change: Partial<GroupBlock>) => brokenForm(block(5, change), 2, at, 1)
  it('has another shape for each kind of torn wood', () => {
    const shapes = [0, 30, 80, null].map((woodFailurePercent) => broken({ woodFailurePercent }).d)
    expect(new Set(shapes).size).toBe(4)
    expect(broken({ woodFailurePercent: 100 }).d).toBe(shapes[2])
  })
  it('is filled where there is a curve, open where there is a peak only, and has no colour of strength where it was left out', () => {
    const of = (state: GroupBlock['state']) => broken({ state })
    expect([of('curve').ink, of('peak-only').ink, of('excluded').ink]).toEqual(['scale-3', 'open-3', 'leader'])
    expect(inkAttributes('open-3').fill).toBe('none')
    expect(of('excluded').d).not.toBe(of('curve').d)
  })
  it('is another for each state without a strength', () => {
    const forms = (['planned', 'waiting', 'lost', 'curve'] as const).map((state) => unbrokenForm({ state }, at, 1).d)
    expect(new Set(forms).size).toBe(4)
  })
})

describe('the marks of blocks', () => {
  const scale = { shareOf: (value: number) => value / 10, stepOf: () => 0 }
  const place = { x: 100, y: 50, width: 60, height: 70 }
  const marksOf = (blocks: readonly GroupBlock[], places = [place]) => {
    const groups = places.map(() => group(blocks))
    return blockMarks(groups, places, sceneOf(groups, places), scale)
  }
  it('stand the higher the stronger, from left to right', () => {
    const [mark] = marksOf([2, 5, 9].map((value) => block(value, { woodFailurePercent: 80 })))
    const places = starts(mark?.kind === 'path' ? mark.d : '')
    expect(places).toHaveLength(3)
    expect(places.map(({ x }) => x)).toEqual(places.map(({ x }) => x).toSorted((a, b) => a - b))
    expect(places.map(({ y }) => y)).toEqual(places.map(({ y }) => y).toSorted((a, b) => b - a))
  })
  it('are as many as there are blocks, joined by their ink alone, and stay within their place', () => {
    const blocks = [
      ...Array.from({ length: 40 }, (_, i) => block(i / 4, { woodFailurePercent: 80 })),
      ...Array.from({ length: 90 }, () => unbroken('waiting')),
    ]
    const marks = marksOf(blocks, [place, { ...place, x: 160 }])
    expect(marks.map((mark) => 'ink' in mark && mark.ink)).toEqual(['scale-1', 'leader'])
    const all = marks.flatMap((mark) => (mark.kind === 'path' ? starts(mark.d) : []))
    expect(all).toHaveLength(260)
    for (const { x, y } of all) {
      expect(x).toBeGreaterThan(96)
      expect(x).toBeLessThan(224)
      expect(y).toBeGreaterThan(46)
      expect(y).toBeLessThan(121)
    }
  })
  it('stand below all strengths where nothing is broken', () => {
    const marks = marksOf([block(0, { woodFailurePercent: 80 }), unbroken('waiting')])
    const [broken, waiting] = marks.map((mark) => (mark.kind === 'path' ? starts(mark.d)[0]!.y : 0))
    expect(waiting).toBeGreaterThan(broken!)
  })
})

describe('overviewKeys', () => {
  const names = (blocks: readonly GroupBlock[], change: Partial<OverviewGroup> = {}) =>
    overviewKeys([group(blocks, change)], stepsBetween(4, 10), 'MPa').map(({ name }) => name)
  it('names the steps of colour and the signs that occur, and no others', () => {
    expect(names([block(5, { woodFailurePercent: 30 }), unbroken('waiting')])).toEqual([
      ...['4.0 to 5.0 MPa', '5.0 to 6.0 MPa', '6.0 to 7.0 MPa', '7.0 to 8.0 MPa', '8.0 to 9.0 MPa', '9.0 to 10.0 MPa'],
      ...['25 to 75 % wood failure', 'on the shelf'],
    ])
    expect(names([unbroken('planned'), unbroken('lost')])).toEqual(['not glued yet', 'lost'])
  })
  it('names what has no strength although it broke, and the age that is not known', () => {
    expect(names([block(null)], { ageMonths: null })).toEqual([
      'broken, bonded area not known',
      '?: spares, and blocks whose age is not known',
    ])
  })
})

describe('overviewFigure', () => {
  it('shows each group at a place of its own', () => {
    const groups = [0, 6, 12].map((ageMonths) => group([block(5)], { ageMonths }))
    const { places, heightPx } = overviewFigure(groups, quantities, size)
    expect(new Set(places.map(({ x }) => x)).size).toBe(3)
    for (const { y, height } of places) expect(y + height).toBeLessThanOrEqual(heightPx)
  })
  it('tells strong from weak by colour', () => {
    const found = inks(draw([block(2), block(9)]))
    expect([...found].filter((ink) => ink.startsWith('scale-')).length).toBeGreaterThanOrEqual(2)
  })
  it('writes its values and its legend in the unit that is shown', () => {
    const { marks } = overviewFigure([group([block(2), block(9)])], quantitiesIn('US'), size)
    expect(marks.some((mark) => mark.kind === 'text' && mark.text.endsWith(' psi'))).toBe(true)
  })
  it('says what it shows', () => {
    expect(draw([block(4), block(6), unbroken('waiting')]).description).toContain(
      '3 blocks of 1 adhesive in 1 group: 2 broken, 4.00 to 6.00\u00a0MPa, mean 5.00\u00a0MPa, 0 of 2 with 75 % wood failure or more; 1 on the shelf.',
    )
    expect(overviewFigure([], quantities, size).description).toBe('There is no block.')
  })
  it('fills a sheet and no more', () => {
    const adhesives = Array.from({ length: 12 }, (_, i) => `adhesive ${i}`)
    const figure = overviewFigure(
      adhesives.map((adhesive) => group([block(5), block(7)], { adhesive })),
      quantities,
      size,
      1000,
    )
    expect(figure.heightPx).toBeCloseTo(1000)
  })
})
