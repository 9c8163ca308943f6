import { expect, it } from 'vitest'
import { hasTraits, isAmong } from '#domain/findings/traitsFilter.ts'

const all = { adhesives: null, jointTypes: null, exposures: null, bondLineGapsMm: null }
const one = { adhesive: 'epoxy E4', jointType: 'lap', exposure: 'loft', bondLineGapMm: null }

it('lets through what has every trait that is asked for, an unknown gap among them', () => {
  expect(hasTraits(one, all)).toBe(true)
  const asked = {
    adhesives: ['casein C1', 'epoxy E4'],
    jointTypes: ['lap'],
    exposures: ['loft'],
    bondLineGapsMm: [null],
  }
  expect(hasTraits(one, asked)).toBe(true)
  for (const change of [
    { adhesives: ['casein C1'] },
    { jointTypes: [] },
    { exposures: ['bilge'] },
    { bondLineGapsMm: [0] },
  ])
    expect(hasTraits(one, { ...asked, ...change })).toBe(false)
})

it('takes no list for all, and an empty one for none', () => {
  expect([isAmong(null, 0), isAmong([0, 6], 6), isAmong([], 6)]).toEqual([true, true, false])
})
