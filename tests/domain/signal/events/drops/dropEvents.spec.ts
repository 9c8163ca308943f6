import { describe, expect, it } from 'vitest'
import { dropEvents } from '#domain/signal/events/drops/dropEvents.ts'

const drop = (startS: number, from: number, fall: number) => ({
  startS,
  downS: startS + 0.01,
  recoveredS: startS + 0.5,
  from,
  drop: fall,
})

describe('the event of partial drops', () => {
  // The level at rest is 50: loads are counted from there.
  const curve = { zero: 50, peak: 5050 }

  it('is none without a drop', () => {
    expect(dropEvents(curve, [])).toEqual([])
  })

  it('is a pop-in for one, with its load as share of the peak', () => {
    const [event, more] = dropEvents(curve, [drop(3, 2050, 200)])
    expect(event).toMatchObject({ kind: 'pop-in', startTimeS: 3, endTimeS: 3.5, dropN: 200, dropPercent: 10 })
    expect(event).toMatchObject({ fromN: 2000, percentOfPeak: 40, cycles: null, meanDropN: null, periodS: null })
    expect(more).toBeUndefined()
  })

  it('is stick-slip for several: a sawtooth of 500 N at 5 kN/mm and 5 mm/min slips every 1.2 s', () => {
    // Time between slips ΔF / (K v) = 500 N / (5000 N/mm x 5/60 mm/s) = 1.2 s: elementary mechanics of a spring that is
    // stretched at a constant speed, no source; relative drop ΔF / F.
    const stiffnessNPerMm = 5000
    const speedMmPerS = 5 / 60
    const load = (t: number) => stiffnessNPerMm * speedMmPerS * t
    const slips = [10, 11.2, 12.4, 13.6].map((t, k) => drop(t, 50 + load(t) - 500 * k, 500))
    const [event] = dropEvents(curve, slips)
    expect(event).toMatchObject({ kind: 'stick-slip', cycles: 4, startTimeS: 10, endTimeS: 14.1 })
    expect(event!.periodS).toBeCloseTo(1.2, 12)
    expect(event!.dropPercent).toBeCloseTo((100 * 500) / load(10), 10)
    expect([event!.dropN, event!.meanDropN, event!.leastDropN]).toEqual([500, 500, 500])
  })

  it('tells the largest, the mean and the smallest drop apart', () => {
    const [event] = dropEvents(curve, [drop(1, 1050, 100), drop(2, 1050, 400), drop(4, 2050, 160)])
    expect(event).toMatchObject({ dropN: 400, dropPercent: 40, meanDropN: 220, leastDropN: 100, periodS: 1.5 })
    expect(event).toMatchObject({ fromN: 1000, percentOfPeak: 20 })
  })
})
