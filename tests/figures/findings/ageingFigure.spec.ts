import { describe, expect, it } from 'vitest'
import type { Figure } from '#figures/drawing/figure.ts'
import type { Ink, Mark } from '#figures/drawing/mark.ts'
import { type AgeingPicture, ageingFigure, ageingKeysFigure } from '#figures/findings/ageingFigure.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const size = { widthPx: 600, emPx: 12 }
const block = (ageMonths: number, strengthMPa: number, lowerLimit = false) => ({
  ...{ name: `C-${ageMonths}-${strengthMPa}`, ageMonths, strengthMPa, lowerLimit, woodFailurePercent: 50 },
})
const curve = [0, 12, 24, 120, 360].map((ageMonths, i) => ({
  ...{ ageMonths, meanMPa: 8 - i / 2, lowMPa: 7 - i, highMPa: 9 + 2 * i },
}))
const picture: AgeingPicture = {
  name: 'casein C1',
  blocks: [block(0, 8), block(0, 8.1), block(12, 7), block(13, 6, true), block(24, 5)],
  means: [
    { ageMonths: 0, n: 2, meanMPa: 8.05, lowMPa: 7, highMPa: 9 },
    { ageMonths: 12, n: 2, meanMPa: 6.5, lowMPa: null, highMPa: null },
    { ageMonths: 24, n: 1, meanMPa: null, lowMPa: null, highMPa: null },
  ],
  curve,
  upcomingMonths: [120, 360],
  endMonths: 360,
  level: { sharePercent: 80, strengthMPa: 6.44 },
  reachMPa: 10,
  heightEm: 24,
  withKeys: true,
}
const draw = (change: Partial<AgeingPicture> = {}) => ageingFigure({ ...picture, ...change }, strength, size)
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.kind === 'named' ? flat(mark.marks) : [mark]))
const ofInk = ({ marks }: Figure, ink: Ink) => flat(marks).filter((mark) => 'ink' in mark && mark.ink === ink)
const texts = ({ marks }: Figure) => flat(marks).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))

describe('the figure of ageing', () => {
  it('reads out means, every block at its own age, and the ages to come with what is expected', () => {
    const words = draw().readings.map((one) => one.words)
    expect(words).toHaveLength(2 + 5 + 2)
    expect(words[0]).toBe('0 months: mean 8.05\u00a0MPa (7.00 to 9.00\u00a0MPa) of 2 blocks')
    expect(words).toContain('C-13-6: at least 6.00\u00a0MPa, 50 % wood failure, 13 months')
    expect(words.at(-1)).toBe('30 years: still to come, 6.00\u00a0MPa expected (3.00 to 17.00\u00a0MPa)')
  })

  it('draws the line whole over what was seen and in dashes beyond, joined at the last age', () => {
    const [seen] = ofInk(draw({ withKeys: false }), 'curve')
    const [ahead] = ofInk(draw({ withKeys: false }), 'ahead')
    const through = (mark: Mark | undefined) => (mark?.kind === 'line' ? mark.through : [])
    expect(through(seen)).toHaveLength(3)
    expect(through(ahead)).toHaveLength(3)
    expect(through(seen).at(-1)).toEqual(through(ahead)[0])
  })

  it('keeps the band within the frame however wide it is', () => {
    const figure = draw({ withKeys: false })
    const [band] = ofInk(figure, 'band')
    const ys = band?.kind === 'path' ? [...band.d.matchAll(/ (-?[\d.]+)/g)].map(([, y]) => Number(y)) : []
    expect(ys.length).toBe(2 * curve.length)
    for (const y of ys) expect(y >= 0 && y <= figure.heightPx).toBe(true)
  })

  it('draws neither line nor band for few ages, and says so', () => {
    const figure = draw({ curve: null })
    for (const ink of ['curve', 'ahead', 'band'] as const) expect(ofInk(figure, ink)).toEqual([])
    expect(figure.description).toContain('No line is drawn: too few ages.')
    expect(texts(figure)).not.toContain('carried on')
  })

  it('marks a block that held more with an arrow, and explains it only where there is one', () => {
    expect(texts(draw())).toContain('held at least this')
    const none = picture.blocks.map((one) => ({ ...one, lowerLimit: false }))
    expect(texts(draw({ blocks: none }))).not.toContain('held at least this')
  })

  it('keeps blocks of one age apart, behind the mean', () => {
    const { readings } = draw()
    const [mean] = readings
    const young = readings.filter(({ words }) => words.startsWith('C-0-'))
    expect(new Set(young.map(({ x }) => x)).size).toBe(2)
    for (const one of young) expect(one.x).toBeGreaterThan(mean!.x)
  })

  it('begins its strengths at 0 and names them in the unit that is asked for', () => {
    expect(texts(draw())).toContain('strength, MPa')
    expect(texts(draw()).filter((text) => text === '0').length).toBeGreaterThan(1)
    expect(texts(ageingFigure(picture, quantitiesIn('US').strength, size))).toContain('strength, psi')
  })

  it('explains the signs of several pictures once, beside them', () => {
    expect(texts(draw({ withKeys: false }))).not.toContain('age still to come')
    expect(
      texts(ageingKeysFigure([picture, picture], size)).filter((text) => text === 'age still to come'),
    ).toHaveLength(1)
  })

  it('stands without a block, a mean and a line', () => {
    const bare = { blocks: [], means: [], curve: null, upcomingMonths: [], level: null, reachMPa: 0 }
    expect(draw(bare).marks.length).toBeGreaterThan(0)
  })
})
