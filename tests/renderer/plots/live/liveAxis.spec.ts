import { expect, it } from 'vitest'
import { nameOfTime, wholeSeconds } from '#renderer/plots/live/liveAxis.ts'
import { leadS } from '#renderer/plots/live/liveView.ts'

const rolling = { captureFromS: null, shownFromS: 80, shownToS: 100 }
const capture = { captureFromS: 50, shownFromS: 50, shownToS: 56 }

it('counts back from now while nothing is captured', () => {
  expect(nameOfTime(100, rolling)).toBe('now')
  expect(nameOfTime(95, rolling)).toBe('−5 s')
})

it('counts a capture from its start', () => {
  expect(nameOfTime(50 + leadS, capture)).toBe('0 s')
  expect(nameOfTime(53 + leadS, capture)).toBe('3 s')
  expect(nameOfTime(50, capture)).toBe('−1 s')
})

it('names whole seconds from the origin, at most eight of them', () => {
  expect(wholeSeconds(capture)).toEqual([50, 51, 52, 53, 54, 55, 56])
  expect(wholeSeconds(rolling)).toEqual([80, 85, 90, 95, 100])
  expect(wholeSeconds({ ...rolling, shownFromS: 0 }).length).toBeLessThanOrEqual(8)
})
