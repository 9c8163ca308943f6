import { describe, expect, it } from 'vitest'
import { fitAllAgeing } from '#domain/findings/ageing/ageingFit.ts'
import { forecastAt } from '#domain/findings/ageing/forecast.ts'
import { leastAges } from '#domain/findings/ageing/series.ts'
import { seriesAhead } from '#domain/findings/ageing/seriesAhead.ts'
import { agedMonths, agedStrengths } from './agedBlocks.ts'

const blocks = agedMonths.map((ageMonths, i) => ({ ageMonths, strengthMPa: agedStrengths[i]!, held: false }))
const ages = [...Map.groupBy(blocks, ({ ageMonths }) => ageMonths)].map(([ageMonths, some]) => ({
  ageMonths,
  blocks: some,
}))
const terms = { confidence: 0.95, endMonths: 360, share: 0.8, atMonths: 240 }
const ahead = (count = ages.length, change: { atMonths?: null; endMonths?: number } = {}) =>
  seriesAhead({ group: 'G', ages: ages.slice(0, count) }, { ...terms, ...change })!

describe('the line of a series', () => {
  it('goes from the first age to the end of the programme, through every age that was seen', () => {
    const places = ahead().curve!.map(({ ageMonths }) => ageMonths)
    expect(places[0]).toBe(0)
    expect(places.at(-1)).toBe(360)
    expect(places).toEqual(expect.arrayContaining([0, 6, 12, 24, 36]))
    expect(places).toEqual(places.toSorted((one, other) => one - other))
  })

  it('is the forecast at each of its places, with the chance of the share at the age asked for', () => {
    const fits = fitAllAgeing(blocks).flatMap(({ fit, weight }) =>
      typeof fit === 'string' || weight === null ? [] : [{ fit, weight }],
    )
    const at = (ageMonths: number) => forecastAt(fits, ageMonths, { confidence: 0.95, firstAgeMonths: 0, share: 0.8 })
    const { curve, below } = ahead()
    const { ageMonths, meanMPa, lowMPa, highMPa } = at(36)
    expect(curve!.find((place) => place.ageMonths === 36)).toEqual({ ageMonths, meanMPa, lowMPa, highMPa })
    const late = ahead(5, { endMonths: 1200 }).curve!.at(-1)
    expect(at(1200).lowMPa).toBeLessThan(0)
    expect(late).toMatchObject({ lowMPa: 0, highMPa: at(1200).highMPa })
    expect(below).toEqual({
      ageMonths: 240,
      sharePercent: 80,
      probability: at(240).belowShareProbability,
      least: at(240).belowShareRange![0],
      most: at(240).belowShareRange![1],
    })
  })

  it('asks for the chance at the end where no age is named, and ends no earlier than what was seen', () => {
    expect(ahead(5, { atMonths: null }).below!.ageMonths).toBe(360)
    expect(ahead(5, { atMonths: null, endMonths: 12 })).toMatchObject({ endMonths: 36, below: { ageMonths: 36 } })
  })

  it('is none for three ages, which says how many there are', () => {
    expect(leastAges).toBe(4)
    expect(ahead(4).curve).not.toBeNull()
    expect(ahead(3)).toEqual({ group: 'G', agesMonths: [0, 6, 12], endMonths: 360, curve: null, below: null })
  })

  it('counts no age whose blocks are all left out, and is nothing without a block', () => {
    const empty = ages.map((age, i) => (i < 2 ? { ...age, blocks: [] } : age))
    expect(seriesAhead({ group: 'G', ages: empty }, terms)).toMatchObject({ agesMonths: [12, 24, 36], curve: null })
    expect(seriesAhead({ group: 'G', ages: ages.map((age) => ({ ...age, blocks: [] })) }, terms)).toBeNull()
  })

  it('says no chance at an age that is not past the first', () => {
    const later = ages.map((age) => ({ ...age, ageMonths: age.ageMonths + 24 }))
    expect(seriesAhead({ group: 'G', ages: later }, { ...terms, atMonths: 24 })!.below).toBeNull()
  })
})
