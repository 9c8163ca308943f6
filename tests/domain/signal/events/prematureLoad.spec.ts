import { describe, expect, it } from 'vitest'
import { firstEarlyDrop, prematureIndex, prematureStretch } from '#domain/signal/events/prematureLoad.ts'
import { cutToRange } from '#domain/signal/stream/thinning.ts'
import { madeEvent } from '#tests/fakes/madeEvents.ts'

// Every 10 ms: up to 410 N at 0.4 s, a drop to 250 N, up to 700 N at 1 s.
const timeS = Float64Array.from({ length: 101 }, (_, i) => i / 100)
const force = timeS.map((t) => (t <= 0.4 ? 1025 * t : 250 + 750 * (t - 0.4)))
const popIn = madeEvent({ kind: 'pop-in', startTimeS: 0.415, endTimeS: 0.45 })

describe('the load before an early drop', () => {
  it('is that of the first pop-in or stick-slip in time', () => {
    const slip = madeEvent({ kind: 'stick-slip', startTimeS: 3 })
    expect(firstEarlyDrop([madeEvent({ kind: 'glitch', startTimeS: 0.1 }), slip, popIn])).toBe(popIn)
    expect(firstEarlyDrop([madeEvent({ kind: 'final-drop', startTimeS: 3 })])).toBeNull()
    expect(prematureIndex([madeEvent({ kind: 'final-drop', startTimeS: 3 })], timeS, force)).toBe(-1)
  })

  it('is the highest sample from 20 ms before the drop to its end', () => {
    expect(prematureIndex([popIn], timeS, force)).toBe(40)
    expect(prematureIndex([{ ...popIn, startTimeS: 0.419 }], timeS, force)).toBe(40)
    expect(prematureIndex([{ ...popIn, startTimeS: 0.421 }], timeS, force)).toBe(45)
    expect(prematureIndex([{ ...popIn, startTimeS: 2, endTimeS: 3 }], timeS, force)).toBe(-1)
  })

  it('is that before the first slip, although later ones begin higher', () => {
    const slips = madeEvent({ kind: 'stick-slip', startTimeS: 0.4, endTimeS: 1, cycles: 2, periodS: 0.3 })
    expect(prematureStretch(slips).toS).toBeCloseTo(0.55, 12)
    expect(prematureStretch({ ...slips, periodS: null }).toS).toBeCloseTo(0.55, 12)
    expect(prematureIndex([slips], timeS, force)).toBe(40)
  })

  it('is never a glitch', () => {
    const struck = force.slice()
    struck[43] = 20_000
    const glitch = madeEvent({ kind: 'glitch', startTimeS: 0.43, endTimeS: 0.43 })
    expect(prematureIndex([popIn], timeS, struck)).toBe(43)
    expect(prematureIndex([popIn, glitch], timeS, struck)).toBe(40)
  })

  it('is the same sample on the part of the curve that was asked for', () => {
    const { fromS, toS } = prematureStretch(popIn)
    const part = cutToRange({ timeS, force }, fromS, toS)
    expect(part.timeS.length).toBeLessThan(10)
    const index = prematureIndex([popIn], part.timeS, part.force)
    expect([part.timeS[index], part.force[index]]).toEqual([0.4, 410])
  })
})

describe('the ends of the stretch before an early drop', () => {
  it('are half of all of the slips where neither their number nor their period is known', () => {
    const slips = madeEvent({ kind: 'stick-slip', startTimeS: 0.4, endTimeS: 1, cycles: null, periodS: null })
    expect(prematureStretch(slips).toS).toBeCloseTo(0.7, 12)
    expect(prematureStretch({ ...slips, cycles: 1 }).toS).toBeCloseTo(0.7, 12)
    expect(prematureStretch({ ...slips, cycles: 0 }).toS).toBeCloseTo(0.7, 12)
  })

  it('hold their first sample, and a glitch that begins with their last', () => {
    const times = Float64Array.of(0.5, 0.625, 0.75)
    const drop = madeEvent({ kind: 'pop-in', startTimeS: 0.51, endTimeS: 0.75 })
    expect(prematureIndex([drop], times, Float64Array.of(9, 5, 7))).toBe(0)
    expect(prematureIndex([drop], times, Float64Array.of(9, 9, 9))).toBe(0)
    expect(prematureIndex([drop], times, Float64Array.of(7, 5, 9))).toBe(2)
    const glitch = madeEvent({ kind: 'glitch', startTimeS: 0.75, endTimeS: 0.8 })
    expect(prematureIndex([drop, glitch], times, Float64Array.of(7, 5, 9))).toBe(0)
    expect(prematureIndex([drop, glitch], times, Float64Array.of(5, 7, 9))).toBe(1)
  })
})
