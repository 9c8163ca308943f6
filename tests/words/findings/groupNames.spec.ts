import { expect, it } from 'vitest'
import { namesOf, tellingNames } from '#words/findings/groupNames.ts'

const group = (key: string, adhesive: string, exposure: string, bondLineGapMm = 0) => ({
  ...{ key, adhesive, exposure, bondLineGapMm },
  jointType: 'lap',
})
const names = (...groups: ReturnType<typeof group>[]) => [...tellingNames(groups, (mm) => `${mm} mm`).values()]

it('calls groups by what tells them apart', () => {
  expect(names(group('1', 'casein C1', 'loft'), group('2', 'epoxy E4', 'loft'))).toEqual(['casein C1', 'epoxy E4'])
  expect(names(group('1', 'casein C1', 'loft'), group('2', 'casein C1', 'bilge'))).toEqual(['loft', 'bilge'])
  expect(names(group('1', 'casein C1', 'loft'), group('2', 'casein C1', 'loft', 0.5))).toEqual([
    'tight joint',
    'gap 0.5 mm',
  ])
})

it('says of a group that nobody wrote what tells it from the others', () => {
  expect(names(group('1', 'casein C1', 'loft'), group('2', 'casein C1', ''))).toEqual(['loft', 'exposure not named'])
  expect(names(group('1', 'casein C1', 'loft'), group('2', 'epoxy E4', ''))).toEqual(['casein C1, loft', 'epoxy E4'])
})

it('calls a group alone by its adhesive', () => {
  expect(names(group('1', 'casein C1', 'loft'))).toEqual(['casein C1'])
})

it('calls a group that is not among them by its key', () => {
  const name = namesOf([group('1', 'casein C1', 'loft')], String)
  expect([name('1'), name('2')]).toEqual(['casein C1', '2'])
})
