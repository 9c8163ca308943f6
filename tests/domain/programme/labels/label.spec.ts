import { expect, it } from 'vitest'
import { labelOf, lastRunning, nextRunning, runningOf } from '#domain/programme/labels/label.ts'

it('puts the check digit behind the running number', () => {
  // ISO/IEC 7064 MOD 11-2 by hand: 794 -> 7 1 6, doubled 12, (12 - 12) mod 11 = 0
  expect(labelOf(794)).toBe('7940')
  expect(runningOf('7940')).toBe(794)
})

it('skips numbers whose check would be X', () => {
  expect(labelOf(79)).toBeNull()
  expect(nextRunning(78)).toBe(80)
  expect([0, 2, 3].map(nextRunning)).toEqual([2, 3, 4])
  expect(Array.from({ length: 110 }, (_, i) => labelOf(i + 1)).filter((label) => label === null)).toHaveLength(10)
})

it('reads every label back as the number it was made from', () => {
  for (let running = nextRunning(0); running < 5000; running = nextRunning(running))
    expect(runningOf(labelOf(running)!)).toBe(running)
})

it('takes nothing for a label that is none', () => {
  for (const text of ['', '7', '7941', '07940', '79X', 'C1-LL-03', '7940 ', '794056789012'])
    expect(runningOf(text)).toBeNull()
})

it('refuses running numbers that no label has room for', () => {
  for (const running of [0, -1, 1.5, lastRunning + 1]) expect(() => labelOf(running)).toThrow(RangeError)
  expect(() => nextRunning(lastRunning)).toThrow(RangeError)
})
