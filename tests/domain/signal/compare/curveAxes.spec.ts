import { expect, test } from 'vitest'
import { type CurveMarks, curveAxes } from '#domain/signal/compare/curveAxes.ts'

const marks: CurveMarks = { outcome: 'break', onsetTimeS: 1, peakTimeS: 9, breakTimeS: 9.5, peak: 4000 }

test('puts 0 where the curve is aligned', () => {
  for (const [alignAt, originS] of [
    ['onset', 1],
    ['peak', 9],
    ['break', 9.5],
  ] as const)
    expect(curveAxes(marks, alignAt, 'no')).toEqual({ originS, timeUnit: 1, forceUnit: 1 })
})

test('counts force in percent of the peak, and time in percent of onset to peak', () => {
  expect(curveAxes(marks, 'onset', 'force')).toEqual({ originS: 1, timeUnit: 1, forceUnit: 40 })
  // By hand: 8 s from start of loading to peak, 0.08 s a percent.
  expect(curveAxes(marks, 'break', 'force-and-time')).toEqual({ originS: 9.5, timeUnit: 0.08, forceUnit: 40 })
})

test('says why a curve cannot be compared that way', () => {
  const because = (
    change: Partial<CurveMarks>,
    ...how: ['onset' | 'peak' | 'break', 'no' | 'force' | 'force-and-time']
  ) => curveAxes({ ...marks, ...change }, ...how)
  const unloading: Partial<CurveMarks> = { outcome: 'unloading', breakTimeS: null }
  expect(because(unloading, 'break', 'no')).toMatch(/unloading/)
  expect(because(unloading, 'peak', 'no')).toMatchObject({ originS: 9 })
  expect(because({ outcome: 'none', onsetTimeS: null, peakTimeS: null, breakTimeS: null }, 'onset', 'no')).toMatch(
    /nothing was loaded/,
  )
  expect(because({ breakTimeS: null }, 'break', 'no')).toMatch(/no break/)
  expect(because({ onsetTimeS: null }, 'onset', 'no')).toMatch(/start of loading was not found/)
  expect(because({ peakTimeS: null }, 'peak', 'no')).toMatch(/no peak/)
  for (const peak of [null, 0, -5]) expect(because({ peak }, 'onset', 'force')).toMatch(/no peak above 0/)
  expect(because({ peakTimeS: 1 }, 'onset', 'force-and-time')).toMatch(/no time from start of loading to peak/)
  expect(because({ onsetTimeS: null }, 'peak', 'force-and-time')).toMatch(/no time from start of loading to peak/)
})

test('takes any peak above 0 for a unit', () => {
  expect(curveAxes({ ...marks, peak: 0.5 }, 'onset', 'force')).toMatchObject({ forceUnit: 0.005 })
})
