import { describe, expect, it } from 'vitest'
import { clearHeight } from '#renderer/plots/labelPlaces.ts'

describe('clearHeight', () => {
  const room = { step: 18, lowest: 300 }
  const label = (x: number, y: number, width = 60) => ({ x, y, width })

  it('leaves a label where it is wanted when nothing stands there', () => {
    expect(clearHeight(label(0, 50), [label(100, 50), label(0, 80)], room)).toBe(50)
  })
  it('goes below what stands there, and below what stands below that', () => {
    expect(clearHeight(label(0, 50), [label(40, 55), label(10, 70)], room)).toBe(88)
    expect(clearHeight(label(0, 50), [label(10, 66), label(40, 50)], room)).toBe(84)
  })
  it('keeps two labels in a line apart', () => {
    expect(clearHeight(label(0, 50), [label(63, 50)], room)).toBe(68)
  })
  it('goes upwards from the lowest place where there is no room below', () => {
    expect(clearHeight(label(0, 298), [label(0, 295), label(0, 300)], room)).toBe(277)
  })
  it('comes to an end where rounding makes two labels that touch seem to meet', () => {
    // 238.4 + 18 lies a hair less than 18 above 238.4
    expect(238.4 + 18 - 238.4).toBeLessThan(18)
    expect(clearHeight(label(0, 238.4), [label(0, 238.4)], room)).toBeCloseTo(256.4, 9)
  })
})
