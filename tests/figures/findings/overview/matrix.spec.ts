import { describe, expect, it } from 'vitest'
import { type MatrixSizes, matrixOf } from '#figures/findings/overview/matrix.ts'
import { conditionsOf, type Placed, panelLines } from '#figures/findings/overview/panels.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const quantities = quantitiesIn('SI')
const size = { widthPx: 800, emPx: 10 }
const sizes: MatrixSizes = { heading: '', cellEm: 3, leastEm: 1.5, rowEm: 4, besideEm: 0, heightPx: null }
const group = (change: Partial<Placed> = {}): Placed => ({
  ...{ adhesive: 'casein C1', jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 0 },
  ...change,
})
const every = (adhesives: string[], exposures: string[], ages: (number | null)[]) =>
  adhesives.flatMap((adhesive) =>
    exposures.flatMap((exposure) => ages.map((ageMonths) => group({ adhesive, exposure, ageMonths }))),
  )
const texts = (groups: readonly Placed[], change: Partial<MatrixSizes> = {}) =>
  matrixOf(groups, quantities, { ...sizes, ...change }, size).marks.flatMap((mark) =>
    mark.kind === 'text' ? [mark.text] : [],
  )

describe('conditionsOf', () => {
  it('puts conditions and their ages in the order in which people count, whatever comes first', () => {
    const groups = [
      group({ exposure: 'loft', ageMonths: 12 }),
      group({ exposure: 'bilge', ageMonths: null }),
      group({ bondLineGapMm: null }),
      group({ exposure: 'bilge', ageMonths: 6 }),
      group({ exposure: 'loft', ageMonths: 0 }),
    ]
    const { conditions } = conditionsOf(groups, quantities)
    expect(conditions.map(({ ages }) => ages)).toEqual([[6, null], [0, 12], [0]])
  })
  it('says once what all conditions have in common', () => {
    const { shared, conditions } = conditionsOf(every(['a'], ['loft', 'bilge'], [0]), quantities)
    expect([shared, ...conditions.map(({ head }) => head)]).toEqual(['beech lap, tight joint', 'bilge', 'loft'])
    expect(conditionsOf([group()], quantities)).toMatchObject({
      shared: '',
      conditions: [{ head: 'beech lap, tight joint, loft' }],
    })
  })
})

describe('panelLines', () => {
  const { conditions } = conditionsOf(every(['a'], ['x', 'y', 'z'], [0, 6]), quantities)
  const lines = (widthPx: number) => panelLines(conditions, (ages) => 50 * ages, { from: 10, widthPx, gapPx: 20 })
  it('begins a further line where one is full', () => {
    expect([340, 339, 219].map((width) => lines(width).map((line) => line.length))).toEqual([[3], [2, 1], [1, 1, 1]])
  })
  it('fills the width, alike on every line, and no wider than twice', () => {
    expect(lines(640)[0]!.map(({ x, width }) => [x, width])).toEqual([
      [10, 200],
      [230, 200],
      [450, 200],
    ])
    expect(lines(1000)[0]!.map(({ width }) => width)).toEqual([200, 200, 200])
    for (const { width } of lines(240).flat()) expect(width).toBeCloseTo(110)
  })
  it('makes one that is too wide for a line narrower', () => {
    expect(
      lines(80)
        .flat()
        .map(({ width }) => width),
    ).toEqual([80, 80, 80])
  })
})

describe('matrixOf', () => {
  it('gives the groups of an adhesive one row, and those of an age one column', () => {
    const groups = every(['a', 'b'], ['loft'], [0, 6])
    const [a0, a6, b0, b6] = matrixOf(groups, quantities, sizes, size).places
    expect([a0!.y, b0!.x, b6!.y]).toEqual([a6!.y, a0!.x, b0!.y])
    expect(b0!.y - a0!.y).toBe(40)
    expect(a6!.x - a0!.x).toBeCloseTo(a0!.width)
  })
  it('keeps every place within its figure, at any width', () => {
    const groups = every(
      ['a', 'a rather long name of an adhesive'],
      ['loft', 'bilge', 'mast'],
      [0, 3, 6, 12, 24, 60, null],
    )
    for (const widthPx of [200, 420, 900, 1600]) {
      const { places, heightPx, widthPx: made } = matrixOf(groups, quantities, sizes, { ...size, widthPx })
      for (const { x, y, width, height } of places) {
        expect(x + width).toBeLessThanOrEqual(made)
        expect(y + height).toBeLessThanOrEqual(heightPx)
        expect(width).toBeGreaterThan(0)
      }
    }
  })
  it('grows wider than a page that is too narrow for its ages, and no wider than it must', () => {
    const ages = Array.from({ length: 40 }, (_, i) => i)
    expect(matrixOf(every(['a'], ['loft'], ages), quantities, sizes, size).widthPx).toBe(size.widthPx)
    expect(
      matrixOf(every(['a'], ['loft'], ages), quantities, sizes, { ...size, widthPx: 300 }).widthPx,
    ).toBeGreaterThan(600)
  })
  it('fills a sheet with its rows, and makes none lower than its name', () => {
    const height = (rows: number) => {
      const groups = every(
        Array.from({ length: rows }, (_, i) => `a${i}`),
        ['loft'],
        [0],
      )
      return matrixOf(groups, quantities, { ...sizes, heightPx: 500 }, size)
    }
    expect(height(8).heightPx).toBeCloseTo(500)
    expect(height(100).places[0]!.height).toBe(16)
    expect(height(1).places[0]!.height).toBe(80)
  })
  it('names adhesives, ages and what stands above', () => {
    const said = texts(every(['a', 'b'], ['loft'], [0, 6, null]), { heading: 'Means' })
    expect(said).toEqual(expect.arrayContaining(['Means', 'a', 'b', '0', '6', '?', 'Age, months']))
  })
  it('shortens a name that its row does not hold, and leaves out ages that would meet', () => {
    const long = 'an adhesive with a name that goes on over line after line after line'
    expect(texts([group({ adhesive: long })], { rowEm: 1.6 }).some((text) => text.endsWith('…'))).toBe(true)
    const many = texts(
      every(
        ['a'],
        ['loft'],
        Array.from({ length: 60 }, (_, i) => 100 + i),
      ),
    )
    expect(many.filter((text) => /^1\d\d$/.test(text)).length).toBeLessThan(31)
  })
  it('stands without any group', () => {
    expect(matrixOf([], quantities, sizes, size)).toMatchObject({ places: [], widthPx: 800 })
  })
})
