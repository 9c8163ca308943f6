import { expect, it } from 'vitest'
import {
  demoLosses,
  demoMoved,
  demoOverruled,
  demoPulledOn,
  demoPulls,
  demoSetAside,
} from '#engine/keeping/demo/demoPulls.ts'
import { blocksPerGroup, demoAdhesives, demoBlockName, demoGroups, demoStart } from '#engine/keeping/demo/demoStudy.ts'

const today = '2031-05-31'
const startOn = demoStart(today)
const names = new Map(
  demoGroups.flatMap((group) =>
    Array.from({ length: blocksPerGroup }, (_, index) => [demoBlockName(group, index), group] as const),
  ),
)
const byAmplifier = new Set(demoPulls.flatMap(({ by, ageMonths }) => (by === 'amplifier' ? [ageMonths] : [])))

it('has two years of pulls behind it, each on its day and none in the future', () => {
  const days = demoPulls.map((pull) => demoPulledOn(startOn, pull))
  expect(days.every((day) => day < today)).toBe(true)
  expect(new Set(demoPulls.map(({ ageMonths }) => ageMonths))).toEqual(new Set([0, 3, 6, 12, 24]))
  const [first] = demoAdhesives
  // Glued on 26 May 2028; the first pull two weeks later
  expect([0, 24].map((ageMonths) => demoPulledOn(startOn, { adhesive: first!, ageMonths }))).toEqual([
    '2028-06-09',
    '2030-05-26',
  ])
})

it('moves the pull that a person moved, and no other', () => {
  const adhesive = demoAdhesives.find(({ code }) => code === demoMoved.code)!
  // Glued on 30 May 2028
  expect(demoPulledOn(startOn, { adhesive, ageMonths: 12 })).toBe('2029-06-08')
  expect(demoPulledOn(startOn, { adhesive, ageMonths: 24 })).toBe('2030-05-30')
})

it('loses blocks before their pull, and some of what is still to come', () => {
  const lost = demoLosses.flatMap(({ months, blocks }) => blocks.map((name) => ({ months, group: names.get(name)! })))
  for (const { months, group } of lost) expect(group.ageMonths).toBeGreaterThan(months)
  expect(lost.some(({ group }) => group.ageMonths > 24)).toBe(true)
})

it('sets aside, and overrules, only breaks with a curve', () => {
  for (const name of Object.keys({ ...demoSetAside, ...demoOverruled }))
    expect(byAmplifier.has(names.get(name)!.ageMonths)).toBe(true)
})
