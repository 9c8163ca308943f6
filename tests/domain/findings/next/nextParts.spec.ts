import { describe, expect, it } from 'vitest'
import type { FindingsBlock, FindingsGroup } from '#contract/findings/procedures.ts'
import { type NextData, type NextPart, type NextTerms, nextUnits } from '#domain/findings/next/nextParts.ts'
import { pooledVariation } from '#domain/programme/study/pooledVariation.ts'
import { plannedStudy } from '#tests/fakes/scripted/plannedStudies.ts'

const jointType = 'long grain to long grain'
const group = (adhesive: string): FindingsGroup => ({
  ...{ key: adhesive, adhesive, jointType, bondLineGapMm: 0, exposure: 'loft' },
})
const groups = ['casein C1', 'resorcinol R2'].map(group)
const steps = [-1, -0.6, -0.2, 0.2, 0.6, 1]
let specimenId = 0
const blocksOf = (of: string, ageMonths: number, mean: number, spread = steps): FindingsBlock[] =>
  spread.map((step) => ({
    ...{ group: of, ageMonths, ageAtBreakMonths: ageMonths, specimenId: ++specimenId, breakId: specimenId },
    ...{ number: `B-${specimenId}`, strengthMPa: mean + step, woodFailurePercent: null, excludedBecause: null },
    simulated: false,
  }))
const blocks = [
  ...blocksOf('casein C1', 0, 10),
  ...blocksOf('casein C1', 12, 9.5),
  ...blocksOf('resorcinol R2', 0, 10.4),
  ...blocksOf('resorcinol R2', 12, 10.4),
]
const series = { adhesive: 'Casein C1', jointType, gapMm: 0, exposure: 'loft', gluedOn: '2026-04-20' }
const counts = [0, 12, 24].map((ageMonths) => ({
  ...{ ...series, ageMonths, planned: 6, lost: 0 },
  ...(ageMonths < 24 ? { broken: 6, waiting: 0 } : { broken: 0, waiting: 6 }),
}))
const shelves = [{ source: plannedStudy({}, { counts }), counts }]
const data: NextData = { blocks, groups, shelves }
const terms: NextTerms = {
  ...{ marginPercent: 10, confidence: 0.95, power: 0.8, today: '2027-06-01', changePercentPerYear: 1 },
  ...{ references: ['RESORCINOL R2'], isAsked: () => true },
}
const partsOf = (given: Partial<NextData> = {}, change: Partial<NextTerms> = {}): NextPart[] =>
  nextUnits({ ...data, ...given }, { ...terms, ...change }).flatMap((unit) => [...unit.lines()])
const found = <Of extends NextPart['of']>(parts: readonly NextPart[], of: Of) =>
  parts.flatMap((part) => (part.of === of ? [part.found as Extract<NextPart, { of: Of }>['found']] : []))

describe('the parts of what to do next', () => {
  it('rest the shelf on the spread of the series itself, whatever the case of its name', () => {
    const own = pooledVariation(
      [blocks.slice(0, 6), blocks.slice(6, 12)].map((some) => some.map((one) => one.strengthMPa)),
    )
    expect(found(partsOf(), 'shelf')).toMatchObject([{ cvFrom: 'series', cvPercent: own!.cvPercent }])
  })

  it('take the spread of all results where the series has few, and that of the plan where there are none', () => {
    const few = blocks.filter((one) => one.group !== 'casein C1')
    expect(found(partsOf({ blocks: few }), 'shelf')).toMatchObject([{ cvFrom: 'results' }])
    const planned = plannedStudy({ cvPercent: 12 }, { counts })
    const none = partsOf({ blocks: [], shelves: [{ source: planned, counts }] })
    expect(found(none, 'shelf')).toMatchObject([{ cvFrom: 'plan', cvPercent: 12 }])
    expect(found(partsOf({ blocks: [] }), 'shelf')).toMatchObject([{ cvFrom: null, cvPercent: null }])
  })

  it('hold each group against the reference of its condition at its age', () => {
    const parts = partsOf()
    expect(found(parts, 'compared')).toEqual([1, 1])
    expect(found(parts, 'undecided').map(({ group: of, ageMonths }) => [of, ageMonths])).toContainEqual([
      'casein C1',
      0,
    ])
    expect(found(partsOf({}, { references: [] }), 'compared')).toEqual([])
  })

  it('hold only what is asked about against it, and point out none but that', () => {
    const far = [...blocks, ...blocksOf('resorcinol R2', 0, 10.4, [-9])]
    const isAsked = (adhesive: string) => adhesive === 'casein C1'
    expect(found(partsOf({ blocks: far }), 'suspicious')).toMatchObject([{ group: 'resorcinol R2', ageMonths: 0 }])
    expect(found(partsOf({ blocks: far }, { isAsked }), 'suspicious')).toEqual([])
    expect(found(partsOf({}, { isAsked: () => false }), 'compared')).toEqual([0, 0])
  })

  it('name a result that lies far out with its specimen, once, whatever test finds it', () => {
    const odd = blocksOf('casein C1', 24, 10, [...steps, -7])
    const [one, ...others] = found(partsOf({ blocks: odd }), 'suspicious')
    expect(others).toEqual([])
    expect(one).toMatchObject({ specimenId: odd.at(-1)!.specimenId, strengthMPa: 3, number: odd.at(-1)!.number })
  })

  it('have other keys as soon as what they rest on differs, the day for the shelf alone', () => {
    const keys = (change: Partial<NextTerms>) => nextUnits(data, { ...terms, ...change }).map(({ key }) => key)
    const changed = (change: Partial<NextTerms>) =>
      keys(change)
        .filter((key, i) => key !== keys({})[i])
        .map((key) => key.split(' ')[0])
    expect(changed({ today: '2027-06-02' })).toEqual(['shelf'])
    expect(changed({ marginPercent: 20 })).toEqual(['undecided', 'undecided'])
  })
})
