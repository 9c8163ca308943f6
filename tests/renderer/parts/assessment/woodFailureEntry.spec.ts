import { describe, expect, it } from 'vitest'
import { emptyEntry, enterKey, type WoodFailureEntry } from '#renderer/parts/assessment/woodFailureEntry.ts'

/** Types keys so many milliseconds apart. */
function typed(keys: readonly string[], apartMs: number, from: WoodFailureEntry = emptyEntry): number | null {
  let entry = from
  keys.forEach((key, index) => {
    entry = enterKey(entry, key, 10_000 + index * apartMs) ?? entry
  })
  return entry.percent
}

describe('enterKey', () => {
  it.each([
    [['7', '5'], 75],
    [['1', '0', '0'], 100],
    [['0'], 0],
    [['7', '3'], 75],
    [['1', '2'], 10],
    [['2', '5', '5'], 5],
  ])('reads %j typed quickly as %d percent', (keys, percent) => expect(typed(keys, 200)).toBe(percent))

  it('begins a new number when the digits come slowly', () => expect(typed(['7', '5'], 3000)).toBe(5))

  it('steps by five with the arrows and stops at both ends', () => {
    expect(typed(['ArrowUp'], 1)).toBe(5)
    expect(typed(['ArrowUp', 'ArrowUp', 'ArrowDown'], 1)).toBe(5)
    expect(typed(['ArrowDown', 'ArrowDown'], 1)).toBe(0)
    expect(typed(['1', '0', '0', 'ArrowRight'], 1)).toBe(100)
  })

  it('empties with Backspace: not assessed is not zero', () => {
    expect(typed(['5', '0', 'Backspace'], 1)).toBeNull()
  })

  it('leaves other keys to others', () => expect(enterKey(emptyEntry, 'x', 0)).toBeNull())

  it('only ever gives multiples of five from 0 to 100', () => {
    for (const first of '0123456789')
      for (const second of '0123456789') {
        const percent = typed([first, second], 100)!
        expect(percent % 5).toBe(0)
        expect(percent).toBeLessThanOrEqual(100)
      }
  })
})
