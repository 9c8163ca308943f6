import { expect, test } from 'vitest'
import type { CurveEvent, Flag } from '#contract/breaks/evaluation.ts'
import { flagsInForce, overruledFlags } from '#domain/strength/overruledFlags.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'

const events: CurveEvent[] = [
  madeEvent({ kind: 'gap', startTimeS: 0.1, endTimeS: 0.15 }),
  madeEvent({ kind: 'clipping', startTimeS: 0.5, endTimeS: 0.8 }),
]
const found: Flag[] = ['gap', 'clipped', 'over-capacity', 'gap-at-peak', 'sampling-too-slow', 'above-verified-range']

test('leave out what speaks of the peak found, and keep what speaks of the capture', () => {
  expect(overruledFlags(found, events, 0.4)).toEqual(['gap', 'over-capacity', 'sampling-too-slow'])
})

test('keep a sample clipped that stood at the end of the converter itself', () => {
  expect(overruledFlags(found, events, 0.5)).toContain('clipped')
  expect(overruledFlags(found, events, 0.49)).not.toContain('clipped')
})

test('say of a sample next to missing ones what is said of a peak there, whether the peak found lay there or not', () => {
  expect(overruledFlags(found, events, 0.15)).toEqual(['gap', 'over-capacity', 'gap-at-peak', 'sampling-too-slow'])
  expect(overruledFlags(['gap'], events, 0.12)).toEqual(['gap', 'gap-at-peak'])
})

test('are those found where no word stands in place of the peak', () => {
  expect(flagsInForce(found, events, null, 500, { verifiedRangeN: [0, 100] })).toEqual(found)
})

test('judge the load that counts by the calibration anew, and name the word last', () => {
  const word = { kind: 'peak-picked', timeS: 0.4 } as const
  const kept = ['gap', 'over-capacity', 'sampling-too-slow']
  const under = (peakN: number | null) => flagsInForce(found, events, word, peakN, { verifiedRangeN: [200, 600] })
  expect(under(601)).toEqual([...kept, 'above-verified-range', 'peak-picked'])
  expect(under(600)).toEqual([...kept, 'peak-picked'])
  expect(under(199)).toEqual([...kept, 'below-verified-range', 'peak-picked'])
  expect(under(null)).toEqual([...kept, 'peak-picked'])
  expect(flagsInForce(found, events, word, 601, null)).toEqual([...kept, 'peak-picked'])
})
