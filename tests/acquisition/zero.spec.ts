import { describe, expect, it } from 'vitest'
import { createZero } from '#acquisition/zero.ts'
import { createSteppedClock } from '#engine/core/steppedClock.ts'

/** A bench at 10 Hz whose noise repeats: mean 0, SD close to 1. */
function benchAt(zero: ReturnType<typeof createZero>, clock: ReturnType<typeof createSteppedClock>) {
  let sample = 0
  return (seconds: number, forceAt: (timeS: number) => number, look: () => void = () => {}) => {
    for (let i = 0; i < seconds * 10; i++) {
      clock.step(0.1)
      const force = Float64Array.of(forceAt(i / 10) + (((sample * 7) % 10) - 4.5) / 2.87)
      // Readings of 0.01 N each.
      zero.take(
        Float64Array.of(sample / 10),
        force,
        force.map((forceN) => Math.round(100 * forceN)),
        0,
        1,
      )
      sample += 1
      look()
    }
  }
}

function started(endCodes: [number, number] | null = null, capacityN: () => number | null = () => 25_000) {
  const clock = createSteppedClock(Date.UTC(2031, 3, 6, 8))
  const zero = createZero(clock, { endCodes, capacityN })
  return { clock, zero, play: benchAt(zero, clock) }
}

describe('createZero', () => {
  it('takes the first zero as soon as the signal is steady', () => {
    const { zero, play } = started()
    expect(zero.tareIfDue(null)).toBeNull()
    play(1.2, () => 480)
    expect(zero.tareIfDue(null)?.offset).toBeCloseTo(480, 0)
    expect(zero.tare()?.takenAt).toBe('2031-04-06T08:00:01.200Z')
  })

  it('does not take the tail of a release for an empty bench', () => {
    const { zero, play } = started()
    play(
      2,
      () => 0,
      () => zero.tareIfDue(50),
    )
    zero.dueAfterCapture()
    const taken: number[] = []
    play(
      6,
      (timeS) => 3000 * Math.exp(-timeS / 0.3),
      () => {
        const tare = zero.tareIfDue(50)
        if (tare !== null) taken.push(tare.offset)
      },
    )
    expect(taken.length).toBe(1)
    expect(Math.abs(taken[0]!)).toBeLessThan(1)
  })

  it('keeps the old zero under a load that stays', () => {
    const { zero, play } = started()
    play(
      2,
      () => 0,
      () => zero.tareIfDue(50),
    )
    zero.dueAfterCapture()
    play(
      30,
      () => 40,
      () => expect(zero.tareIfDue(50)).toBeNull(),
    )
  })

  it('follows a drift every ten seconds at most, and leaves a zero alone that is good', () => {
    const { clock, zero, play } = started()
    play(
      2,
      () => 0,
      () => zero.tareIfDue(50),
    )
    play(
      30,
      () => 0,
      () => expect(zero.tareIfDue(50)).toBeNull(),
    )
    const takenAtS: number[] = []
    play(
      60,
      (timeS) => timeS,
      () => {
        if (zero.tareIfDue(50) !== null) takenAtS.push(clock.nowS())
      },
    )
    expect(takenAtS.length).toBeGreaterThanOrEqual(4)
    for (let i = 1; i < takenAtS.length; i++) expect(takenAtS[i]! - takenAtS[i - 1]!).toBeGreaterThanOrEqual(10 - 1e-9)
    expect(Math.abs(zero.tare()!.offset - 60)).toBeLessThan(11)
  })

  it('is kept through a cut of the stream and taken anew after it, but forgotten with the scale', () => {
    const { zero, play } = started()
    play(
      2,
      () => 0,
      () => zero.tareIfDue(50),
    )
    const before = zero.tare()
    zero.restart()
    expect(zero.tare()).toEqual(before)
    expect(() => zero.tareNow()).toThrow(expect.objectContaining({ code: 'not-stable' }))
    play(
      4,
      () => 5,
      () => zero.tareIfDue(50),
    )
    expect(zero.tare()?.offset).toBeCloseTo(5, 0)
    zero.forget()
    expect(zero.tare()).toBeNull()
  })
})

describe('a zero out of bounds', () => {
  it.each<[string, (timeS: number) => number, [number, number] | null, string]>([
    ['at the end code', () => 83_886, [-1e6, 1e6], 'the converter stands at the end of its range'],
    ['far from any zero', () => 83_886, null, 'the zero would lie beyond half the rated load'],
    [
      'at full scale either way',
      (timeS) => (Math.round(10 * timeS) % 2 === 0 ? 84_510 : -84_510),
      null,
      'the readings scatter by more than 1 % of the rated load',
    ],
  ])('%s is taken neither by itself nor by hand, and it says why', (_name, forceAt, endCodes, because) => {
    const { zero, play } = started(endCodes)
    play(3, forceAt, () => expect(zero.tareIfDue(50)).toBeNull())
    expect(zero.judge().unsteadyBecause).toBe(because)
    expect(() => zero.tareNow()).toThrow(
      expect.objectContaining({ code: 'not-stable', message: `The zero cannot be taken: ${because}.` }),
    )
    expect(zero.tare()).toBeNull()
    play(3, () => 480)
    expect(zero.tareIfDue(null)?.offset).toBeCloseTo(480, 0)
  })

  it('names what to look at, not what to wait for', () => {
    const { zero, play } = started()
    play(3, () => 83_886)
    expect(() => zero.tareNow()).toThrow(
      expect.objectContaining({ hint: expect.stringContaining('newtons per count') }),
    )
  })

  it('is not followed to', () => {
    const { zero, play } = started([-1e6, 60_000])
    play(
      2,
      () => 480,
      () => zero.tareIfDue(500),
    )
    play(
      20,
      () => 600.1,
      () => expect(zero.tareIfDue(500)).toBeNull(),
    )
  })

  it('is no matter of newtons where there is no force', () => {
    const { zero, play } = started(null, () => null)
    play(3, () => 83_886)
    expect(zero.tareIfDue(null)?.offset).toBeCloseTo(83_886, 0)
  })

  it('forgets the end code with the stream in which it stood', () => {
    for (const cut of ['restart', 'forget'] as const) {
      const { zero, play } = started([-1e6, 1e6])
      play(3, () => 83_886)
      zero[cut]()
      expect(zero.judge().unsteadyBecause).toBe('there are no readings yet')
    }
  })
})
