import { describe, expect, it } from 'vitest'
import { firstAfter, meansBeforeBreak, upTo } from '#domain/signal/events/curvePart.ts'
import { madeCurve } from '#tests/fakes/madeCurve.ts'

describe('a part of a curve', () => {
  const curve = madeCurve((t) => 10 * t, { intervalS: 0.1, endS: 2 })

  it('begins with the first mean after a time', () => {
    expect([-1, 0, 0.05, 0.1, 5].map((timeS) => firstAfter(curve, timeS))).toEqual([0, 1, 1, 2, 21])
  })

  it('ends with the mean at a time, in the memory of the curve', () => {
    const part = upTo(curve, 1)
    expect(part.timeS.length).toBe(11)
    expect(part.force[10]).toBe(10)
    expect(part.timeS.buffer).toBe(curve.timeS.buffer)
  })

  it('before the break holds the means that lie wholly before it', () => {
    expect(meansBeforeBreak(curve)).toBe(21)
    expect(meansBeforeBreak({ ...curve, breakS: 1 })).toBe(11)
    // A mean of 4 samples 0.1 s apart, placed at 0.9 s, reaches to 1.05 s.
    expect(meansBeforeBreak({ ...curve, breakS: 1, samplesPerMean: 4 })).toBe(9)
  })
})

describe('a mean before the break', () => {
  it('may reach beyond it by the rounding of its time and no more', () => {
    const curve = madeCurve((t) => 10 * t, { intervalS: 0.125, endS: 2, breakS: 1 })
    const later = (byS: number) => meansBeforeBreak({ ...curve, timeS: curve.timeS.map((timeS) => timeS + byS) })
    expect([later(0), later(5e-7), later(5e-4)]).toEqual([9, 9, 8])
  })
})
