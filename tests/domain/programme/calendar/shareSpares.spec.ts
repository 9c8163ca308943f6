import { describe, expect, it } from 'vitest'
import { type Spare, shareSpares } from '#domain/programme/calendar/shareSpares.ts'

const spare = (specimenId: number, change: Partial<Spare> = {}): Spare => ({
  ...{ specimenId, gluedOn: '2031-08-31', series: 'casein', standing: 'waiting', brokenAtMonths: [] },
  ...change,
})
const broken = (specimenId: number, ...brokenAtMonths: number[]) =>
  spare(specimenId, { standing: 'broken', brokenAtMonths })
const share = (spares: readonly Spare[], ...pulls: [ageMonths: number, blocksPerSeries: number][]) =>
  shareSpares(
    spares,
    pulls.map(([ageMonths, blocksPerSeries]) => ({ ageMonths, blocksPerSeries })),
  )

describe('the spares of a day', () => {
  it('go in the order of breaking to the pulls in theirs, none to two', () => {
    const shares = share([spare(3), spare(1), spare(2)], [9, 1], [6, 2])
    expect(shares.map(({ waiting }) => waiting)).toEqual([[3], [1, 2]])
  })

  it('are shared out series by series', () => {
    const [pull] = share([spare(1), spare(2), spare(3, { series: 'hide' }), spare(4, { series: 'hide' })], [9, 1])
    expect(pull).toEqual({ blocks: { planned: 2, broken: 0, waiting: 2, lost: 0 }, waiting: [1, 3] })
  })

  it('stay with the pull in a session of which they were broken, though another comes first', () => {
    const shares = share([broken(1, 6), spare(2), spare(3)], [9, 1], [6, 1])
    expect(shares).toEqual([
      { blocks: { planned: 1, broken: 0, waiting: 1, lost: 0 }, waiting: [2] },
      { blocks: { planned: 1, broken: 1, waiting: 0, lost: 0 }, waiting: [] },
    ])
  })

  it('count for one pull alone when they were broken in a session of two', () => {
    const shares = share([broken(1, 9, 6), spare(2)], [9, 1], [6, 1])
    expect(shares.map(({ blocks, waiting }) => [blocks.broken, waiting])).toEqual([
      [1, []],
      [0, [2]],
    ])
  })

  it('belong to no pull when they were broken outside every session of one, or lost', () => {
    const [pull] = share([broken(1), broken(2, 12), spare(3, { standing: 'lost' }), spare(4)], [9, 2])
    expect(pull).toEqual({ blocks: { planned: 2, broken: 0, waiting: 1, lost: 1 }, waiting: [4] })
  })
})
