import { describe, expect, it } from 'vitest'
import { meanTreatment } from '#contract/findings/overview.ts'
import type { GroupMean } from '#domain/findings/overview/meanTable.ts'
import { heatTable } from '#figures/findings/overview/heatTable.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const quantities = quantitiesIn('SI')
const size = { widthPx: 900, emPx: 12 }
const mean = (meanMPa: number | null, change: Partial<GroupMean> = {}): GroupMean => ({
  ...{ adhesive: 'casein C1', jointType: 'beech lap', bondLineGapMm: 0, exposure: 'loft', ageMonths: 0 },
  ...{ n: meanMPa === null ? 0 : 12, meanMPa, held: 0, noFit: null, percentOfReference: null },
  ...change,
})
const terms = { treatment: meanTreatment.parse({}), reference: null }
const texts = (means: GroupMean[], change = {}) =>
  heatTable(means, { ...terms, ...change }, quantities, size).marks.flatMap((mark) =>
    mark.kind === 'text' ? [mark.text] : [],
  )

describe('heatTable', () => {
  it('writes each mean with the number of its blocks, and names unit and treatment', () => {
    const said = texts([mean(9.123), mean(4, { ageMonths: 6, n: 3 })])
    expect(said).toEqual(
      expect.arrayContaining(['9.12', 'n 12', '4.00', 'n 3', 'Mean strength, MPa, torn wood as observed']),
    )
  })
  it('writes percent of the reference where one is chosen, and names it', () => {
    const said = texts([mean(9, { percentOfReference: 83.6 })], { reference: 'epoxy E4' })
    expect(said).toEqual(expect.arrayContaining(['84', 'Mean strength in percent of epoxy E4, torn wood as observed']))
  })
  it('says that a place has no number, and why', () => {
    expect(texts([mean(9), mean(null, { ageMonths: 6 })])).toEqual(
      expect.arrayContaining(['–', '–: no result that counts']),
    )
    const against = texts([mean(9, { percentOfReference: null })], { reference: 'epoxy E4' })
    expect(against).toEqual(
      expect.arrayContaining(['–', '–: no result that counts, here or of the reference beside it']),
    )
    expect(texts([mean(9)])).not.toContain('–: no result that counts')
    const censored = { treatment: meanTreatment.parse({ woodFailure: 'censored' }) }
    expect(texts([mean(9), mean(null, { ageMonths: 6, n: 3, held: 3, noFit: 'no-failure' })], censored)).toEqual(
      expect.arrayContaining([
        '–: no result, or too few bonds that failed for a fit',
        'Mean strength, MPa, torn wood censored from 75 % torn wood on, normal',
      ]),
    )
  })
  it('colours higher means by higher steps, with the writing of the same step', () => {
    const { marks } = heatTable([mean(4), mean(10, { ageMonths: 6 })], terms, quantities, size)
    const grounds = marks.flatMap((mark) => (mark.kind === 'band' ? [mark.ink] : []))
    expect(grounds).toEqual(['scale-1', 'scale-6'])
    const ink = (text: string) =>
      marks.flatMap((mark) => (mark.kind === 'text' && mark.text === text ? [mark.ink] : []))
    expect([ink('4.00'), ink('10.0'), ink('10.00')].flat()).toEqual(['on-1', 'on-6'])
  })
  it('leaves out how many blocks where a row is too low', () => {
    const many = Array.from({ length: 60 }, (_, i) => mean(5 + i / 10, { adhesive: `adhesive ${i}` }))
    const { marks, places } = heatTable(many, terms, quantities, size, 400)
    expect(places[0]!.height).toBeLessThan(2.6 * size.emPx)
    expect(marks.some((mark) => mark.kind === 'text' && mark.text === 'n 12')).toBe(false)
  })
  it('says its lowest and its highest mean, and how many have none', () => {
    const { description } = heatTable(
      [mean(9), mean(4, { ageMonths: 6 }), mean(null, { ageMonths: 12 })],
      terms,
      quantities,
      size,
    )
    expect(description).toBe(
      '2 means. Lowest: casein C1, beech lap, tight joint, loft, 6 months old: mean 4.00\u00a0MPa of 12 blocks. Highest: casein C1, beech lap, tight joint, loft, 0 months old: mean 9.00\u00a0MPa of 12 blocks. 1 group without a number.',
    )
    expect(heatTable([], terms, quantities, size).description).toBe('No group has a mean.')
  })
})
