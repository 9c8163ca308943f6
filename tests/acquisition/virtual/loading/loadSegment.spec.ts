import { describe, expect, it } from 'vitest'
import { forceAt, LoadBuilder } from '#acquisition/virtual/loading/loadSegment.ts'

const plain = { startS: 0, durationS: 1, c0: 0, c1: 0, c2: 0, c3: 0 }
const still = { fallN: 0, fallS: 1, ringN: 0, ringS: 1, ringHz: 0 }

describe('the force of a stretch', () => {
  // Worked by hand from the formula above LoadSegment.
  it('is its polynomial', () => {
    expect(forceAt({ ...plain, ...still, c0: 1, c1: 2, c2: 3, c3: 4 }, 2)).toBe(1 + 4 + 12 + 32)
  })
  it('lets go by the 37 % that an exponential leaves after its time constant', () => {
    expect(forceAt({ ...plain, ...still, c0: 100, fallN: 200, fallS: 0.5 }, 0.5)).toBeCloseTo(100 + 200 / Math.E, 9)
  })
  it('swings below first, by the whole amplitude after a quarter of the period but for its decay', () => {
    const ringing = { ...plain, ...still, c0: 100, ringN: 10, ringS: 1e9, ringHz: 50 }
    expect(forceAt(ringing, 0)).toBe(100)
    expect(forceAt(ringing, 1 / 200)).toBeCloseTo(90, 6)
    expect(forceAt({ ...ringing, ringS: 1 / 200 }, 1 / 200)).toBeCloseTo(100 - 10 / Math.E, 6)
  })
})

describe('stretches one after another', () => {
  const crack = { fallS: 0.001, ringShare: 0.2, ringS: 0.01, ringHz: 200 }

  it('each begin where and when the one before ended', () => {
    const load = new LoadBuilder()
    load.drive(2, 500, 100)
    load.letGo(1, 900, 0.3, 10)
    load.stroke(0.5, 1, 400)
    load.crack(0.2, 50, crack)
    for (const [index, segment] of load.segments.entries()) {
      const before = load.segments[index - 1]
      expect(segment.startS).toBeCloseTo(before === undefined ? 0 : before.startS + before.durationS, 12)
      expect(forceAt(segment, 0)).toBeCloseTo(before === undefined ? 0 : forceAt(before, before.durationS), 9)
    }
    expect(load.timeS).toBeCloseTo(3.7, 12)
    expect(load.forceN).toBe(forceAt(load.segments.at(-1)!, 0.2))
  })
  it('drive by the slope and half of its change', () => {
    const load = new LoadBuilder()
    load.drive(2, 500, 100)
    expect(load.forceN).toBe(500 * 2 + (100 * 4) / 2)
  })
  it('lift by a whole stroke, at rest at both its ends', () => {
    const load = new LoadBuilder()
    load.stroke(2, 2, 400)
    expect(load.forceN).toBeCloseTo(400, 9)
    const [stroke] = load.segments
    expect(forceAt(stroke!, 1e-6) / 1e-6).toBeCloseTo(0, 2)
    expect((forceAt(stroke!, 2) - forceAt(stroke!, 2 - 1e-6)) / 1e-6).toBeCloseTo(0, 2)
    expect(forceAt(stroke!, 1)).toBeCloseTo(200, 9)
  })
  it('crack down to what is left, and swing by a share of the fall', () => {
    const load = new LoadBuilder()
    load.drive(1, 1000)
    load.crack(1, 200, crack)
    expect(load.segments[1]).toMatchObject({ c0: 200, fallN: 800, ringN: 160 })
    expect(load.forceN).toBeCloseTo(200, 6)
  })
})
