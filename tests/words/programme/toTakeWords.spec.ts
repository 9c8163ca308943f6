import { describe, expect, it } from 'vitest'
import type { PullGroup } from '#contract/programme/pullProcedures.ts'
import { toTakeWords } from '#words/programme/toTakeWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const group = (change: Partial<PullGroup>): PullGroup => ({
  ...{ adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft', place: 'shelf 2', blocks: 12 },
  ...change,
})
const said = (groups: PullGroup[], isGlued = true) => toTakeWords(groups, isGlued, quantitiesIn('SI').length.text)

describe('what a pull takes from the shelf, in words', () => {
  it('names each place once, in the order in which people count, and those without a place last', () => {
    const places = ['', 'shelf 10', 'shelf 2'].map((place) => group({ place }))
    expect(said(places).places.map(({ place }) => place)).toEqual(['shelf 2', 'shelf 10', 'No place written'])
    expect(said([group({ place: '' })], false).places[0]?.place).toBe('Not glued yet')
  })

  it('says together how many there are of adhesives that have as many', () => {
    const groups = [
      group({}),
      group({ adhesive: 'PVA V5', blocks: 11 }),
      group({ adhesive: 'epoxy E4' }),
      group({ adhesive: 'resorcinol R2' }),
    ]
    expect(said(groups)).toEqual({
      places: [
        { place: 'shelf 2', blocks: '47 blocks: 12 each of casein C1, epoxy E4 and resorcinol R2, 11 of PVA V5' },
      ],
      common: 'lap, tight joint, loft',
    })
    expect(said([group({})]).places).toEqual([{ place: 'shelf 2', blocks: '12 of casein C1' }])
  })

  it('says at each place in what its blocks differ from others, and once what all have in common', () => {
    const groups = [group({}), group({ exposure: 'bilge', blocks: 3 }), group({ gapMm: 0.5, place: 'box 1' })]
    expect(said(groups)).toEqual({
      places: [
        { place: 'box 1', blocks: '12 of casein C1 (gap 0.5\u00a0mm, loft)' },
        {
          place: 'shelf 2',
          blocks: '15 blocks: 12 of casein C1 (tight joint, loft); 3 of casein C1 (tight joint, bilge)',
        },
      ],
      common: 'lap',
    })
  })

  it('is nothing where no block waits', () => {
    expect(said([])).toEqual({ places: [], common: '' })
  })
})
