import { expect, test } from 'vitest'
import type { OverruledPeak } from '#contract/breaks/decision.ts'
import type { Flag } from '#contract/breaks/evaluation.ts'
import { isLowerLimit } from '#domain/strength/lowerLimit.ts'

const overruled: OverruledPeak = {
  ...{ kind: 'peak-picked', by: 'bench 1', reason: 'slipped', recordedAt: '2026-06-02T09:00:00.000Z' },
  ...{ timeS: 4, foundPeakN: 21_000 },
}

test.each<[Flag]>([['clipped'], ['gap-at-peak'], ['over-capacity']])(
  'a peak found with %s is a lower limit',
  (flag) => {
    expect(isLowerLimit({ flags: [flag], overruled: null, peakN: 21_000 }, 20_000)).toBe(true)
  },
)

test('a peak with other doubts is none', () => {
  expect(isLowerLimit({ flags: ['gap', 'glitch', 'sampling-too-slow'], overruled: null, peakN: 900 }, 20_000)).toBe(
    false,
  )
})

test('a load picked on a capture that went over capacity is one only above it', () => {
  const flags: Flag[] = ['over-capacity', 'peak-picked']
  expect(isLowerLimit({ flags, overruled, peakN: 15_000 }, 20_000)).toBe(false)
  expect(isLowerLimit({ flags, overruled, peakN: 20_500 }, 20_000)).toBe(true)
  expect(isLowerLimit({ flags: ['clipped', 'peak-picked'], overruled, peakN: 15_000 }, null)).toBe(true)
})
