import { describe, expect, it } from 'vitest'
import type { ClimateStore } from '#contract/findings/climate.ts'
import { climateLimits } from '#contract/findings/climate.ts'
import type { ObservedBreak } from '#domain/findings/observedBreak.ts'
import { answerClimate, answerExposures, type ClimateArchive } from '#engine/findings/climate/answerClimate.ts'

const limits = climateLimits.parse({})
const today = '2027-06-01'
const loft = { kind: 'exposure', name: 'loft' } as const

const broken = (specimenId: number): ObservedBreak => ({
  ...{ specimenId, breakId: specimenId, number: String(specimenId), adhesive: 'casein C1', jointType: 'lap' },
  ...{ bondLineGapMm: 0, exposure: 'loft', gluedOn: '2026-01-01', startedAt: '2027-01-01T00:00:00.000Z' },
  ...{ areaMm2: null, peakN: null, strengthMPa: 9 + specimenId, board: null, woodFailurePercent: null },
  ...{ setAside: null, simulated: false, ageMonths: null, studyId: null, pullAgeMonths: null },
})

function archive(imports: number[] = [1]) {
  let read = 0
  const store: ClimateStore = loft
  const made: ClimateArchive = {
    climateStores: () => (imports.length === 0 ? [] : [{ store, imports, simulated: true }]),
    climateReadings: () => {
      read += 1
      const series = { timeS: Float64Array.of(0, 3600), temperatureC: Float64Array.of(-5, 5) }
      return { store, imports, simulated: true, series: { ...series, humidityPercent: Float64Array.of(60, 70) } }
    },
    specimensOfStore: () => [1, 2],
    observations: () => [1, 2, 3].map(broken),
    storeInForce: (wanted) => (wanted.name === 'old loft' ? loft : wanted),
    waitingInStore: () => [],
    pullSources: () => ({ rows: [] }),
  }
  return { made, reads: () => read }
}

describe('the climate of a store', () => {
  it('stands beside the blocks in it, and no others', () => {
    const found = answerClimate(archive().made, { store: loft, limits, today }, new Map())
    expect(found).toMatchObject({ store: loft, simulated: true, climate: { readings: 2 } })
    expect(found.series).toMatchObject([{ adhesive: 'casein C1', ages: [{ n: 2, meanMPa: 10.5 }] }])
  })

  it('is worked out once while the same imports count and the limits are the same', () => {
    const { made, reads } = archive()
    const memory = new Map()
    answerClimate(made, { store: loft, limits, today }, memory)
    answerClimate(made, { store: loft, limits, today }, memory)
    answerExposures(made, memory)
    expect(reads()).toBe(1)
    answerClimate(made, { store: loft, limits: { ...limits, temperatureAboveC: 25 }, today }, memory)
    answerClimate(archive([1, 2]).made, { store: loft, limits, today }, memory)
    expect(reads()).toBe(2)
  })

  it('is found by every name that the store ever had', () => {
    const found = answerClimate(archive().made, { store: { ...loft, name: 'old loft' }, limits, today }, new Map())
    expect(found).toMatchObject({ store: loft, climate: { readings: 2 } })
  })

  it('is nothing where every import is set aside, and the blocks stand there all the same', () => {
    const found = answerClimate(archive([]).made, { store: loft, limits, today }, new Map())
    expect(found).toMatchObject({ climate: null, simulated: false, series: [{ adhesive: 'casein C1' }] })
  })
})

it('says of each exposure with readings what it did', () => {
  expect(answerExposures(archive().made, new Map())).toMatchObject([
    { exposure: 'loft', fromS: 0, toS: 3600, simulated: true, whole: { freezeThawCycles: 1 } },
  ])
  const place = {
    ...archive().made,
    climateStores: () => [{ store: { kind: 'place', name: 'shelf' } as const, imports: [1], simulated: false }],
  }
  expect(answerExposures(place, new Map())).toEqual([])
})
