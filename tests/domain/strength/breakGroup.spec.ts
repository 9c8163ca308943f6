import { expect, test } from 'vitest'
import { type GroupMember, groupOf } from '#domain/strength/breakGroup.ts'

/** A block of the Saltmarsh Boatyard School; glued on 1 March, broken on 2 May: 62 days, two months. */
function member(breakId: number, change: Partial<GroupMember> = {}): GroupMember {
  return {
    breakId,
    startedAt: '2031-05-02T09:30:00.000Z',
    outcome: 'break',
    number: `C1-LL-${breakId}`,
    adhesive: 'casein C1',
    jointType: 'long grain to long grain',
    bondLineGapMm: 0,
    exposure: 'loft',
    gluedOn: '2031-03-01',
    pullAgeMonths: null,
    ...change,
  }
}

const own = member(1)
const idsWith = (...others: GroupMember[]) => groupOf(own, [own, ...others]).breakIds

test('says what its breaks have in common', () => {
  expect(groupOf(own, [own]).common).toEqual({
    adhesive: 'casein C1',
    jointType: 'long grain to long grain',
    bondLineGapMm: 0,
    exposure: 'loft',
    ageMonths: 2,
  })
})

test.each<[string, Partial<GroupMember>]>([
  ['adhesive', { adhesive: 'resorcinol R2' }],
  ['joint type', { jointType: 'scarf' }],
  ['exposure', { exposure: 'bilge' }],
  ['gap', { bondLineGapMm: 0.5 }],
  ['gap that was not measured', { bondLineGapMm: null }],
  ['age', { gluedOn: '2030-03-01' }],
  ['age that is not known', { gluedOn: null }],
  ['outcome', { outcome: 'unloading' }],
  ['outcome that is not known yet', { outcome: null }],
])('leaves out a break of another %s', (_name, change) => {
  expect(idsWith(member(2, change))).toEqual([1])
})

test('takes names for the same whatever their case, accents and leading zeros', () => {
  expect(idsWith(member(2, { adhesive: 'Caséin c01', exposure: 'LOFT', gluedOn: '2031-03-06' }))).toEqual([1, 2])
})

test('takes the age of the pull for the age, where a block was broken in one', () => {
  const inPull = (breakId: number, gluedOn: string) => member(breakId, { gluedOn, pullAgeMonths: 2 })
  const late = [inPull(2, '2031-02-10'), inPull(3, '2031-03-20')]
  expect(groupOf(late[0]!, [...late, member(4, { gluedOn: '2031-02-10' })])).toMatchObject({
    common: { ageMonths: 2 },
    breakIds: [2, 3],
  })
})

test('takes two gaps, or two ages, that are not known for the same', () => {
  const unknown = { bondLineGapMm: null, gluedOn: null }
  const [a, b] = [member(1, unknown), member(2, unknown)]
  expect(groupOf(a, [a, b])).toMatchObject({ common: { bondLineGapMm: null, ageMonths: null }, breakIds: [1, 2] })
})

test('holds the break that was asked for, whatever became of it', () => {
  const unloading = member(3, { outcome: 'unloading' })
  expect(groupOf(unloading, [own, unloading]).breakIds).toEqual([1, 3])
})

test('is in natural order of number, and breaks of one block in the order of their making', () => {
  const numbers = [
    member(5, { number: 'C1-LL-10' }),
    member(4, { number: 'C1-LL-2' }),
    member(3, { number: 'c1-ll-02' }),
  ]
  expect(idsWith(...numbers)).toEqual([1, 3, 4, 5])
})
