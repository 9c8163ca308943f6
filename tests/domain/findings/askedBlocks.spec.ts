import { describe, expect, it, test } from 'vitest'
import { findingsSettings } from '#contract/findings/keptFinding.ts'
import { agesOf, ageToShow, blocksAsked, choiceOf, conditionKey, filterOf } from '#domain/findings/askedBlocks.ts'

const at = (group: string, ageMonths: number | null) => ({ group, ageMonths })
const settings = (change: object) => findingsSettings.parse(change)

test('lists ages youngest first, an unknown one before them', () => {
  expect(agesOf([at('a', 12), at('a', null), at('b', 0), at('b', 12)])).toEqual([null, 0, 12])
})

test('looks at the youngest age of several groups until one is chosen', () => {
  const blocks = [at('a', 0), at('a', 6), at('b', 6), at('b', 12)]
  expect(ageToShow(blocks, '')).toBe(6)
  expect(ageToShow(blocks, '12')).toBe(12)
  expect(ageToShow(blocks, '99')).toBe(6)
})

test('looks at the youngest age where one group has blocks, and at none without blocks', () => {
  expect(ageToShow([at('a', 6), at('a', 3)], '')).toBe(3)
  expect(ageToShow([], '')).toBeUndefined()
})

test('asks of all blocks until something is chosen', () => {
  const all = { studyId: null, adhesives: null, jointTypes: null, exposures: null, bondLineGapsMm: null }
  expect(filterOf(settings({}))).toEqual(all)
  expect(filterOf(settings({ studyId: 3, adhesive: 'E4', exposure: 'loft' }))).toEqual({
    ...all,
    ...{ studyId: 3, adhesives: ['E4'], exposures: ['loft'] },
  })
  expect(filterOf(settings({ jointType: 'scarf', bondLineGapMm: '0.3' }))).toEqual({
    ...all,
    ...{ jointTypes: ['scarf'], bondLineGapsMm: [0.3] },
  })
  expect(filterOf(settings({ bondLineGapMm: 'null' })).bondLineGapsMm).toEqual([null])
  expect(filterOf(settings({ asked: 'overall', studyId: 3 })).studyId).toBe(3)
})

test('asks of the reference too where some adhesives are chosen, whatever else was picked before', () => {
  const overall = { reference: 'R2', adhesives: ['E4'] }
  expect(filterOf(settings({ asked: 'overall', exposure: 'loft', overall })).adhesives).toEqual(['E4', 'R2'])
  expect(filterOf(settings({ asked: 'overall', exposure: 'loft', overall })).exposures).toBeNull()
})

describe('the blocks that an answer rests on', () => {
  const group = (key: string, exposure: string) => ({
    ...{ key, adhesive: key, jointType: 'lap', bondLineGapMm: 0, exposure },
  })
  const groups = [group('a', 'loft'), group('b', 'bilge')]
  const blocks = [at('a', 0), at('b', 0), at('a', 12)]
  const asked = (change: object) => blocksAsked(choiceOf(settings(change)), blocks, groups)

  it('are of one age, and of all where it is asked what changed', () => {
    expect(asked({})).toEqual([at('a', 0), at('b', 0)])
    expect(asked({ asked: 'changed' })).toEqual(blocks)
  })
  it('are of all ages and adhesives where it is asked what to do next', () => {
    expect(asked({ asked: 'next', adhesive: 'a' })).toEqual(blocks)
    expect(choiceOf(settings({ asked: 'next', studyId: 3, adhesive: 'a', exposure: 'loft' })).filter).toMatchObject({
      ...{ studyId: 3, adhesives: null, exposures: ['loft'] },
    })
  })
  it('are those in conditions with a weight where conditions are chosen', () => {
    const condition = (exposure: string, weight: number) => ({ jointType: 'lap', bondLineGapMm: 0, exposure, weight })
    const conditions = [condition('loft', 0), condition('bilge', 2)]
    expect(asked({ asked: 'overall', overall: { conditions } })).toEqual([at('b', 0)])
    expect(asked({ asked: 'overall' })).toHaveLength(2)
  })
  it('are the same by the same choice, whatever else two questions say', () => {
    const other = {
      asked: 'torn-wood',
      woodFailure: 'adjusted',
      marginPercent: '5',
      overall: { reference: 'R2', conditions: [] },
    }
    expect(choiceOf(settings(other))).toEqual(choiceOf(settings({})))
    for (const change of [{ adhesive: 'E4' }, { exposure: 'loft' }, { ageMonths: '12' }, { asked: 'changed' }])
      expect(choiceOf(settings(change))).not.toEqual(choiceOf(settings({})))
  })
})

it('knows a condition by joint type, gap and exposure alone', () => {
  const one = { jointType: 'lap', bondLineGapMm: 0, exposure: 'loft' }
  expect(conditionKey({ ...one, weight: 3 } as typeof one)).toBe(conditionKey(one))
})
