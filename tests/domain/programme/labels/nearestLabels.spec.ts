import { expect, it } from 'vitest'
import { labelOf, nextRunning, runningOf } from '#domain/programme/labels/label.ts'
import { nearestLabels } from '#domain/programme/labels/nearestLabels.ts'

it('finds the label again after every single wrong digit, swap, lost and doubled digit', () => {
  for (let running = nextRunning(1000); running < 1200; running = nextRunning(running)) {
    const label = labelOf(running)!
    for (let at = 0; at < label.length; at++) {
      const [before, digit, after] = [label.slice(0, at), label.charAt(at), label.slice(at + 1)]
      const slips = [
        ...[...'0123456789'].map((other) => before + other + after),
        before + after.slice(0, 1) + digit + after.slice(1),
        before + after,
        before + digit + digit + after,
      ]
      // A lost or doubled digit can give another right label; a wrong or swapped one cannot
      for (const slip of slips) if (runningOf(slip) === null) expect(nearestLabels(slip), slip).toContain(label)
    }
  }
})

it('names swapped digits before all other slips', () => {
  expect(nearestLabels('9740')[0]).toBe('7940')
})

it('gives only right labels, each once, and few', () => {
  const found = nearestLabels('12345')
  expect(new Set(found).size).toBe(found.length)
  expect(found.every((label) => runningOf(label) !== null)).toBe(true)
  expect(found.length).toBeLessThan(20)
})

it('knows nothing near a right label or a text', () => {
  for (const text of ['7940', 'C1-LL-03', '', '12345678901']) expect(nearestLabels(text)).toEqual([])
})
