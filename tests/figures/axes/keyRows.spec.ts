import { describe, expect, it } from 'vitest'
import { keyRows } from '#figures/axes/keyRows.ts'
import { textWidth } from '#figures/drawing/textWidth.ts'

const key = (name: string) => ({ name, sign: null })

describe('keyRows', () => {
  it('takes no room without keys', () => {
    expect(keyRows([], 100, 300, 12)).toEqual([0, []])
  })
  it('goes on in a new line where the width is used up', () => {
    const [height, marks] = keyRows(['run 1', 'run 2', 'run 3'].map(key), 100, 90, 12)
    const rows = new Set(marks.map((mark) => (mark.kind === 'text' ? mark.y : 0)))
    expect(rows.size).toBe(2)
    expect(Math.max(...rows)).toBeLessThan(100 + height)
  })
  it('breaks a name that is wider than all there is, and cuts nothing', () => {
    const [, marks] = keyRows([key('filled: going up, hollow: going down')], 0, 120, 12)
    for (const mark of marks)
      if (mark.kind === 'text') expect(mark.x + textWidth(mark.text, 12)).toBeLessThanOrEqual(120)
    expect(marks.length).toBeGreaterThan(1)
  })
})
