import { describe, expect, it } from 'vitest'
import {
  buildLevels,
  forceRange,
  levelFor,
  levelsInSlices,
  type MinMaxLevels,
  stretchOf,
} from '#renderer/plots/minMaxLevels.ts'
import { seededNumbers } from '#tests/fakes/scripted/scriptedCurve.ts'

function seededCurve(seed: number, length: number): { timeS: Float64Array; force: Float64Array } {
  const random = seededNumbers(seed)
  const timeS = new Float64Array(length)
  const force = new Float64Array(length)
  let time = 0
  for (let i = 0; i < length; i++) {
    time += 1e-4 + random() * 1e-3
    timeS[i] = time
    // Plateaus of equal values too, where lowest and highest are one.
    force[i] = random() < 0.2 ? 7 : Math.round(1000 * (random() - 0.5))
  }
  return { timeS, force }
}

const seeds = Array.from({ length: 60 }, (_, i) => i + 1)
const lengthOf = (seed: number) => 200 + ((seed * 977) % 9000)

describe('the levels of a curve', () => {
  it.each(seeds)('keep lowest and highest of every stretch, in order of time, at every level (seed %i)', (seed) => {
    const { timeS, force } = seededCurve(seed, lengthOf(seed))
    const { levels } = buildLevels(timeS, force)
    expect(levels.length).toBeGreaterThan(0)
    for (const [i, level] of levels.entries()) {
      const stretch = stretchOf(i + 1)
      expect(level.length).toBe(2 * Math.ceil(force.length / stretch))
      for (let s = 0; s < level.length / 2; s++) {
        const [first, second] = [level[2 * s]!, level[2 * s + 1]!]
        const samples = force.subarray(s * stretch, (s + 1) * stretch)
        expect(first).toBeLessThanOrEqual(second)
        expect(first).toBeGreaterThanOrEqual(s * stretch)
        expect(second).toBeLessThan(s * stretch + samples.length)
        expect(Math.max(force[first]!, force[second]!)).toBe(Math.max(...samples))
        expect(Math.min(force[first]!, force[second]!)).toBe(Math.min(...samples))
      }
    }
  })

  it.each(seeds)('never lose a peak of a single sample, wherever it lies (seed %i)', (seed) => {
    const { timeS, force } = seededCurve(seed, lengthOf(seed))
    const at = Math.floor(seededNumbers(seed + 1000)() * force.length)
    force[at] = 1e6
    for (const level of buildLevels(timeS, force).levels) expect(level).toContain(at)
  })

  it.each([1, 7, 64, 1000, 1e9])('are the same when built in slices of %i samples', (slice) => {
    const { timeS, force } = seededCurve(5, 5000)
    const slices = levelsInSlices(timeS, force, slice)
    let pauses = 0
    let step = slices.next()
    for (; !step.done; step = slices.next()) pauses++
    expect((step.value as MinMaxLevels).levels).toEqual(buildLevels(timeS, force).levels)
    if (slice <= 1000) expect(pauses).toBeGreaterThan(5)
  })

  it('are none for a curve that every plot shows whole', () =>
    expect(buildLevels(Float64Array.of(0, 1, 2), Float64Array.of(1, 2, 3)).levels).toEqual([]))

  it('refuse times and forces of different number', () =>
    expect(() => buildLevels(Float64Array.of(0, 1), Float64Array.of(1))).toThrow(RangeError))
})

describe('levelFor', () => {
  const curve = buildLevels(...(Object.values(seededCurve(3, 40_000)) as [Float64Array, Float64Array]))
  it.each([0.1, 1, 3.9])('shows the samples themselves at %d to a column', (perColumn) =>
    expect(levelFor(curve, perColumn)).toBe(0),
  )
  it.each([4, 7.9, 8, 63, 64, 65, 500])(
    'takes stretches no longer than a column of %d samples, and none much shorter',
    (n) => {
      const stretch = stretchOf(levelFor(curve, n))
      expect(stretch).toBeLessThanOrEqual(n)
      expect(2 * stretch).toBeGreaterThan(n)
    },
  )
  it('stays at the coarsest level however many samples a column has', () =>
    expect(levelFor(curve, 1e12)).toBe(curve.levels.length))
})

describe('forceRange', () => {
  it('finds lowest and highest of any stretch, as looking at every sample does', () => {
    const { timeS, force } = seededCurve(11, 3000)
    const curve = buildLevels(timeS, force)
    const random = seededNumbers(12)
    for (let i = 0; i < 300; i++) {
      const from = Math.floor(random() * 3000)
      const to = from + 1 + Math.floor(random() * (3000 - from))
      const samples = force.subarray(from, to)
      expect(forceRange(curve, from, to)).toEqual({ lowest: Math.min(...samples), highest: Math.max(...samples) })
    }
  })
  it('is null for no sample', () =>
    expect(forceRange(buildLevels(Float64Array.of(), Float64Array.of()), 0, 0)).toBeNull())
})
