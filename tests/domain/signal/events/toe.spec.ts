import { describe, expect, it } from 'vitest'
import { seatingEndS } from '#domain/signal/events/seating.ts'
import { toeLine } from '#domain/signal/events/toe.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
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

describe('the part that the line goes through', () => {
  const offset = 400
  /** 50 N/s up to a share of the peak, then 250 N/s up to it, above a level at rest of 400 N. */
  const kneeAt = (share: number) => {
    const kneeS = 20 * share
    return madeCurve((t) => offset + (t < kneeS ? 50 * t : 50 * kneeS + 250 * (t - kneeS)), {
      intervalS: 0.001,
      endS: 20,
      zero: offset,
    })
  }

  it('begins at 0.15 of the peak', () => {
    // The knee is at 1000 s N of 1000 s + 5000 (1 - s) N, s its share of the time: at 0.15 for s = 0.75 / 1.6.
    const clear = (share: number) => {
      const line = toeLine({ ...kneeAt(share), onsetS: 15 * share }, null, null)
      return line !== null && Math.abs(line.slopeNPerS - 250) < 1e-3
    }
    const share = limitOf(clear, 0.2, 0.7)
    const kneeN = 1000 * share
    expect(kneeN / (kneeN + 5000 * (1 - share))).toBeCloseTo(0.15, 3)
  })

  it('is 0.15 of the peak at least', () => {
    // From 750 N on: up to 1500 N, at 6 s.
    const ramp = madeCurve((t) => offset + 250 * t, { intervalS: 0.001, endS: 20, zero: offset })
    expect(limitOf((drivenS) => toeLine(ramp, null, drivenS) !== null, 4, 8)).toBeCloseTo(6, 2)
  })

  it('ends with the last mean before the load fell, which is that much above its first', () => {
    const upTo = (lastN: number) => {
      const force = Float64Array.of(0, 160, 200, 230, 260, 290, lastN, 700, 1000)
      const curve = madeCurve((t) => force[t]!, { intervalS: 1, endS: 8, noise: 1e4, onsetS: -100 })
      return toeLine(curve, 1.5, 6.5)
    }
    expect(upTo(350)).not.toBeNull()
    expect(upTo(349)).toBeNull()
  })

  it('may rise slowly', () => {
    const slow = madeCurve((t) => 0.5 * t, { intervalS: 0.1, endS: 20 })
    expect(toeLine(slow, null, null)!.slopeNPerS).toBeCloseTo(0.5, 9)
  })
})
