import { expect, test } from 'vitest'
import type { ResultChange } from '#contract/reevaluation/changes.ts'
import { type ComparedResult, changeFigures, resultPair } from '#domain/strength/resultChange.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'

const popIn = madeEvent({ kind: 'pop-in', startTimeS: 0.2, endTimeS: 0.3 })
const stickSlip = madeEvent({ kind: 'stick-slip', startTimeS: 0.4, endTimeS: 0.6, cycles: 5 })

const before: ComparedResult = {
  evaluationId: 1,
  method: 'test 1',
  outcome: 'break',
  peakN: 6000,
  flags: ['uncalibrated', 'gap'],
  events: [popIn],
}
const changedBy = (change: Partial<ComparedResult>) => resultPair(before, { ...before, ...change }).changed
const same = { outcome: false, peak: false, flags: false, events: false }

test('finds two equal results the same', () => {
  expect(resultPair(before, before)).toMatchObject({ differenceN: 0, differencePercent: 0, changed: same })
})

test.each<[string, Partial<ComparedResult>, Partial<ResultChange['changed']>]>([
  ['an outcome', { outcome: 'unloading' }, { outcome: true }],
  ['a peak by more than the last bits', { peakN: 6000 * (1 + 2e-9) }, { peak: true }],
  ['no peak by its last bits', { peakN: 6000 * (1 + 5e-10) }, {}],
  ['a peak that is gone', { peakN: null }, { peak: true }],
  ['flags', { flags: ['uncalibrated'] }, { flags: true }],
  ['no flags by their order', { flags: ['gap', 'uncalibrated'] }, {}],
  ['events', { events: [popIn, stickSlip] }, { events: true }],
  ['the cycles of an event', { events: [] }, { events: true }],
])('tells %s that changed', (_name, change, changed) => {
  expect(changedBy(change)).toEqual({ ...same, ...changed })
})

test('gives the difference in newtons and in percent of the peak before', () => {
  const now = { ...before, peakN: 5700 }
  expect(resultPair(before, now)).toMatchObject({ differenceN: -300, differencePercent: -5 })
  expect(resultPair({ ...before, peakN: 0 }, now)).toMatchObject({ differenceN: 5700, differencePercent: null })
  expect(resultPair({ ...before, peakN: null }, now)).toMatchObject({ differenceN: null, differencePercent: null })
})

test('names events in order of time, those of stick-slip with their cycles', () => {
  expect(resultPair(before, { ...before, events: [stickSlip, popIn] }).now.events).toEqual(['pop-in', 'stick-slip 5'])
})

function change(change: Partial<ComparedResult>, word: Partial<ResultChange> = {}): ResultChange {
  const names = { breakId: 1, number: null, adhesive: null, simulated: false, overruled: null }
  const standing = { setAside: null, setAsideCause: null }
  return { ...names, ...standing, ...word, ...resultPair(before, { ...before, ...change }) }
}

test('counts what changed, and takes mean and largest of the peaks that did', () => {
  const changes = [change({ peakN: 6060 }), change({ peakN: 5700, flags: [] }), change({}, { setAside: 'slipped' })]
  // By hand: +1 % and -5 %.
  expect(changeFigures(changes)).toEqual({
    ...{ results: 3, outcomes: 0, peaks: 2, flags: 1, events: 0, overruled: 0, setAside: 1 },
    ...{ meanDifferencePercent: -2, largestDifferencePercent: -5 },
  })
  expect(changeFigures([change({})])).toMatchObject({ meanDifferencePercent: null, largestDifferencePercent: null })
})
