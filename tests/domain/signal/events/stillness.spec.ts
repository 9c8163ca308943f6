import { describe, expect, it } from 'vitest'
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
