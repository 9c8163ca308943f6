import { describe, expect, it } from 'vitest'
import { seatingEndS } from '#domain/signal/events/seating.ts'
import { toeLine } from '#domain/signal/events/toe.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

/** Slope that grows evenly up to `toeS`, then stays: a parabola and the line that touches its end. */
const toe = (toeS: number, slope: number, zero: number) => (t: number) =>
  zero + (t < toeS ? (slope * t * t) / (2 * toeS) : slope * (t - toeS / 2))

describe('toe compensation', () => {
  it.each([
    [1, 0],
    [2, 35],
    [3, -120],
  ])('of a parabola of %f s meets the level at rest half way along it, exactly', (toeS, zero) => {
    // s (t − toe/2) = 0 at toe/2.
    const curve = madeCurve(toe(toeS, 250, zero), { intervalS: 0.0125, endS: 20, zero })
    const line = toeLine(curve, toeS, null)!
    expect(line.zeroTimeS).toBeCloseTo(toeS / 2, 9)
    expect(line.slopeNPerS).toBeCloseTo(250, 7)
  })

  it('is within a hundredth of the loading time of that with the seating as it is found', () => {
    const curve = madeCurve(toe(2, 250, 0), { intervalS: 0.0125, endS: 20 })
    expect(Math.abs(toeLine(curve, seatingEndS(curve, 0), null)!.zeroTimeS - 1)).toBeLessThan(0.2)
  })

  it('of a straight line is its start', () => {
    expect(
      toeLine(
        madeCurve((t) => 250 * t, { intervalS: 0.1, endS: 20 }),
        null,
        null,
      )!.zeroTimeS,
    ).toBeCloseTo(0, 9)
  })

  it('is not offered where the load was held, fell or is a few samples', () => {
    const held = lines([0, 0], [4, 1200], [14, 1200], [24, 4200])
    expect(toeLine(madeCurve(held, { intervalS: 0.1, endS: 24 }), null, null)).toBeNull()
    const fallen = lines([0, 0], [6, 1800], [6.1, 900], [20, 4800])
    expect(toeLine(madeCurve(fallen, { intervalS: 0.1, endS: 20 }), null, null)).toBeNull()
    expect(
      toeLine(
        madeCurve((t) => 250 * t, { intervalS: 4, endS: 20 }),
        null,
        null,
      ),
    ).toBeNull()
  })

  it('is not offered where the load rose faster at first, which is the contrary of slack', () => {
    // From 1 s on 800 N + 4200/19 N/s (t − 1 s), which is 0 at 1 − 800 × 19 / 4200 = −2.6 s.
    const knee = lines([0, 0], [1, 800], [20, 5000])
    expect(toeLine(madeCurve(knee, { intervalS: 0.1, endS: 20 }), null, null)).toBeNull()
    // 5 % of the way to the middle of the line is no more than the onset is known to.
    const late = madeCurve((t) => 250 * t, { intervalS: 0.1, endS: 20, onsetS: 0.4 })
    expect(toeLine(late, null, null)!.zeroTimeS).toBeCloseTo(0, 9)
  })

  it('is offered on five means at least', () => {
    // Between 750 N and 3000 N of 5000 N: samples every 500 N are five, 1000 N to 3000 N; every 600 N four, 1200 N to 3000 N.
    const every = (stepN: number) => madeCurve((t) => 250 * t, { intervalS: stepN / 250, endS: 20, peak: 5000 })
    expect(toeLine(every(500), null, null)!.slopeNPerS).toBeCloseTo(250, 9)
    expect(toeLine(every(600), null, null)).toBeNull()
  })

  it('is not offered where the line falls, whatever the noise explains', () => {
    const force = Float64Array.of(0, 160, 550, 500, 400, 300, 200, 150, 350, 1000)
    const curve = madeCurve((t) => force[t]!, { intervalS: 1, endS: 9, noise: 1e4 })
    expect(toeLine(curve, null, null)).toBeNull()
  })

  it('is not offered by more than a tenth of the way to the middle of the line before the onset', () => {
    // The middle lies at 7.5 s: (7.5 s − onset) / 10 are 0.68 s before an onset at 0.68 s.
    const from = (onsetS: number) =>
      toeLine(
        madeCurve((t) => 250 * t, { intervalS: 0.01, endS: 20, onsetS }),
        null,
        null,
      )
    expect(from(0.64)).not.toBeNull()
    expect(from(0.72)).toBeNull()
  })

  it('is not offered where the load leaves the line by more than 0.02 of the peak, and than three SDs of noise', () => {
    // Above and below by turns: an SD of the same size, of means of four samples, sqrt(4) = 2.
    const waving = (byN: number, noise: number) => {
      const curve = madeCurve((t) => 250 * t, { intervalS: 0.01, endS: 20, peak: 5000, noise, samplesPerMean: 4 })
      const force = curve.force.map((f, i) => f + (i % 2 === 0 ? byN : -byN))
      return toeLine({ ...curve, force }, null, null)
    }
    expect(waving(95, 0)).not.toBeNull()
    expect(waving(105, 0)).toBeNull()
    expect(waving(150, 104)).not.toBeNull()
    expect(waving(150, 96)).toBeNull()
  })

  it('is that of the part before the load first fell, where that is long enough', () => {
    const popIn = lines([0, 0], [1, 0], [8, 2100], [8.1, 1900], [20, 5470])
    const curve = madeCurve(popIn, { intervalS: 0.1, endS: 20 })
    expect(toeLine(curve, null, 8)!.zeroTimeS).toBeCloseTo(1, 9)
    expect(toeLine(curve, null, 4)).toBeNull()
  })
})
