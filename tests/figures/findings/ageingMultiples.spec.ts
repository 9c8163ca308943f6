import { describe, expect, it } from 'vitest'
import { svgFile } from '#figures/drawing/svgText.ts'
import type { AgeingPicture } from '#figures/findings/ageingFigure.ts'
import { ageingMultiples } from '#figures/findings/ageingMultiples.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const names = ['casein C1', 'resorcinol R2', 'epoxy E4']
const picture = (name: string): AgeingPicture => ({
  name,
  blocks: [{ name: `${name} 1`, ageMonths: 12, strengthMPa: 7, lowerLimit: false, woodFailurePercent: 50 }],
  means: [{ ageMonths: 12, n: 1, meanMPa: 7, lowMPa: null, highMPa: null }],
  ...{ curve: null, upcomingMonths: [24], endMonths: 24, level: null, reachMPa: 10, heightEm: 19, withKeys: true },
})
const drawn = (widthPx: number, series = names) => ageingMultiples(series.map(picture), strength, { widthPx, emPx: 12 })
/** The place of each series by its name, which stands above it. */
const headings = (widthPx: number) =>
  drawn(widthPx).marks.flatMap((mark) =>
    mark.kind === 'text' && mark.ink === 'heading' ? [[mark.text, mark.x, mark.y] as const] : [],
  )

describe('several series in one figure', () => {
  it('stand beside each other where there is room and below each other where there is none, each under its name', () => {
    const wide = headings(700)
    expect(wide.map(([name]) => name)).toEqual(names)
    expect(wide[0]![2]).toBe(wide[1]![2])
    expect(wide[1]![1]).toBeGreaterThan(300)
    expect(wide[2]![1]).toBe(wide[0]![1])
    expect(new Set(headings(320).map(([, x]) => x)).size).toBe(1)
  })

  it('explain their signs once', () => {
    const texts = svgFile(drawn(700)).match(/>age still to come</g)
    expect(texts).toHaveLength(1)
  })

  it('read every point out in its own panel', () => {
    const { readings, heightPx, widthPx } = drawn(700)
    expect(readings).toHaveLength(9)
    for (const { x, y } of readings) expect(x > 0 && x < widthPx && y > 0 && y < heightPx).toBe(true)
    const blocks = readings.filter(({ words }) => words.includes('wood failure'))
    expect(blocks[1]!.x - blocks[0]!.x).toBeGreaterThan(300)
    expect(blocks[2]!.y - blocks[0]!.y).toBeGreaterThan(200)
  })

  it('say how many they are, and each what it shows', () => {
    const { title, description } = drawn(700)
    expect(title).toBe('Strength against age: 3 series')
    for (const name of names) expect(description).toContain(`Strength against age of ${name}: 1 block at 1 age.`)
  })
})
