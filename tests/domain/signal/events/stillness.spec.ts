import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { cracked, stands } from '#domain/signal/events/stillness.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

describe('standing still', () => {
  const ramp = (slope: number, noise: number) => madeCurve((t) => 1000 + slope * t, { intervalS: 0.1, endS: 2, noise })

  it('is a slope below the limit', () => {
    expect(stands(ramp(20, 0), 0, 2, 50, 100)).toBe(true)
    expect(stands(ramp(-300, 0), 0, 2, 50, 100)).toBe(true)
    expect(stands(ramp(60, 0), 0, 2, 50, 100)).toBe(false)
    expect(stands(ramp(20, 0), 1, 1.05, 50, 100)).toBe(false)
  })

  it('is not believed where noise alone could make it so', () => {
    // 20 samples after 0 s, 0.1 s apart: Σ (t − t̄)² = 0.01 x 20 x (20² − 1) / 12 = 6.65 s²; SD of the slope σ / 2.579.
    // 80 N/s below the rate are three of them at σ = 68.8 N.
    expect(stands(ramp(20, 68), 0, 2, 50, 100)).toBe(true)
    expect(stands(ramp(20, 70), 0, 2, 50, 100)).toBe(false)
  })
})

describe('a crack', () => {
  const falls = (fallS: number, toN: number, noise = 0) =>
    madeCurve(lines([0, 2000], [3, 2000], [3 + fallS, toN], [10, toN]), { intervalS: 0.0125, endS: 10, noise })

  it('is a fall that went at once', () => {
    expect(cracked(falls(0.004, 1700), 0, 10, 2000, 1700)).toBe(true)
    expect(cracked(falls(2, 1700), 0, 10, 2000, 1700)).toBe(false)
  })

  it('is none where it is small, or part of a deep let-down, or no more than noise', () => {
    expect(cracked(falls(0.004, 1930), 0, 10, 2000, 1930)).toBe(false)
    expect(cracked(falls(0.004, 1700), 0, 10, 2000, 1000)).toBe(false)
    // 24 samples to a mean: 4 x 300 x sqrt(2 / 24) = 346 N.
    expect(cracked(falls(0.004, 1700, 300), 0, 10, 2000, 1700)).toBe(false)
  })

  it('counts from 4.5 % of the load and four noise SDs, and makes up 0.55 of the fall', () => {
    expect(cracked(falls(0.004, 1908), 0, 10, 2000, 1908)).toBe(true)
    expect(cracked(falls(0.004, 1912), 0, 10, 2000, 1912)).toBe(false)
    // 300 N are 4 σ sqrt(2 / 24) at σ = 259.8 N.
    expect(cracked(falls(0.004, 1700, 258), 0, 10, 2000, 1700)).toBe(true)
    expect(cracked(falls(0.004, 1700, 262), 0, 10, 2000, 1700)).toBe(false)
    // 300 N are 0.55 of 545.5 N.
    expect(cracked(falls(0.004, 1700), 0, 10, 2000, 1457)).toBe(true)
    expect(cracked(falls(0.004, 1700), 0, 10, 2000, 1452)).toBe(false)
  })

  it('may be one of several that make up the fall together', () => {
    const steps = lines(
      [0, 2000],
      [2, 2000],
      [2.004, 1800],
      [5, 1800],
      [5.004, 1600],
      [8, 1600],
      [8.004, 1400],
      [10, 1400],
    )
    const falling = madeCurve(steps, { intervalS: 0.0125, endS: 10 })
    expect(cracked(falling, 0, 10, 2000, 1400)).toBe(true)
    // Two small ones on the way of a let-down do not make it a crack.
    const letDown = lines([0, 2000], [2, 2000], [2.004, 1880], [6, 700], [6.004, 600], [10, 600])
    expect(cracked(madeCurve(letDown, { intervalS: 0.0125, endS: 10 }), 0, 10, 2000, 600)).toBe(false)
  })

  it('outside the stretch does not count', () => {
    expect(cracked(falls(0.004, 1700), 4, 10, 2000, 1700)).toBe(false)
    expect(cracked(falls(0.004, 1700), 0, 2.5, 2000, 1700)).toBe(false)
  })

  it('counts though the stretch ends with it', () => {
    expect(cracked(falls(0.004, 1700), 0, 3.35, 2000, 1700)).toBe(true)
  })
})

describe('the limit of standing still', () => {
  it('is a slope below it, and noise that leaves it below the usual rate', () => {
    const ramp = madeCurve((t) => 16 * t, { intervalS: 0.5, endS: 4 })
    expect(stands(ramp, -1, 4, 16.001, 100)).toBe(true)
    expect(stands(ramp, -1, 4, 16, 100)).toBe(false)
    // Without noise a slope is as low as the rate where it is the rate.
    expect(stands(ramp, -1, 4, 50, 16)).toBe(true)
    expect(stands(ramp, -1, 4, 50, 15.999)).toBe(false)
  })
})

describe('cracks in any load', () => {
  /** As the rule says it, place by place. */
  function plainly(
    force: Float64Array,
    width: number,
    from: number,
    to: number,
    high: number,
    lowest: number,
  ): boolean {
    const begin = Math.max(0, from - width)
    const end = Math.min(force.length, to)
    const mean = (at: number) => {
      let sum = 0
      for (let k = at; k < at + width; k++) sum += force[k]!
      return sum / width
    }
    let cracks = 0
    let crack = 0
    for (let middle = begin + width; middle + width < end; middle++) {
      const fall = mean(middle - width) - mean(middle + 1)
      if (fall >= 0.045 * (high - 50)) crack = Math.max(crack, fall)
      else {
        cracks += crack
        crack = 0
      }
    }
    return cracks + crack > 0 && cracks + crack >= 0.55 * (high - lowest)
  }

  it('are what looking at every place gives, on two thousand random loads', () => {
    const random = createRandom(77)
    let found = 0
    for (let trial = 0; trial < 2000; trial++) {
      // Whole multiples of 3 N, so that equal falls and falls on the limit come about.
      const force = Float64Array.from({ length: 30 }, () => 950 + 3 * Math.round(random.between(-12, 12)))
      const at = 4 + Math.floor(random.between(0, 20))
      for (let i = at; i < 30; i++) force[i]! -= 60
      const intervalS = [0.15, 0.1, 0.5][trial % 3]!
      const width = [2, 3, 2][trial % 3]!
      const curve = madeCurve((t) => force[Math.round(t / intervalS)]!, { intervalS, endS: 29 * intervalS, zero: 50 })
      const [from, to] = [Math.floor(random.between(0, 10)), 30 - Math.floor(random.between(0, 12))]
      const lowest = 1050 - 3 * Math.floor(random.between(20, 60))
      const seen = cracked(curve, (from - 0.5) * intervalS, (to - 0.5) * intervalS, 1050, lowest)
      const expected = plainly(force, width, from, to, 1050, lowest)
      expect(seen).toBe(expected)
      if (seen) found += 1
    }
    expect(found).toBeGreaterThan(300)
    expect(found).toBeLessThan(1700)
  })

  it('are looked for between means of two samples where nothing is known of their interval', () => {
    const force = Float64Array.of(1000, 1000, 1000, 900, 800, 800, 800, 800)
    const curve = { ...madeCurve((t) => force[t]!, { intervalS: 1, endS: 7 }), intervalS: 0 }
    expect(cracked(curve, -1, 9, 1000, 800)).toBe(true)
    expect(cracked(curve, -1, 9, 1000, 600)).toBe(false)
  })

  it('are none where nothing came down', () => {
    const level = madeCurve(() => 1000, { intervalS: 0.1, endS: 5 })
    expect(cracked(level, 0, 5, 1000, 1000)).toBe(false)
  })
})
