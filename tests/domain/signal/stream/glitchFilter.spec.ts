import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createGlitchFilter } from '#domain/signal/stream/glitchFilter.ts'

function filter(forces: readonly number[], noise: number | null = 1) {
  const accepted: number[] = []
  const glitches: [number, number][] = []
  const glitchFilter = createGlitchFilter({
    accept(timeS, force, reading, from, to) {
      expect(to).toBeGreaterThan(from)
      expect(reading.subarray(from, to)).toEqual(force.subarray(from, to).map((newtons) => newtons / 2))
      accepted.push(...timeS.subarray(from, to))
    },
    glitch: (from, to) => glitches.push([from, to]),
  })
  if (noise !== null) glitchFilter.setNoise(noise)
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i)
  const reading = force.map((newtons) => newtons / 2)
  for (let i = 0; i < force.length; i++)
    if (glitchFilter.goodUntil(force, i, i + 1) > i) accepted.push(i)
    else glitchFilter.question(timeS, force, reading, i)
  // Once it has ended nothing waits.
  for (let times = 0; times < 2; times++) glitchFilter.finish()
  return { accepted, glitches }
}

const ramp = [0, 1, 0, 100, 200, 300, 400, 500, 600, 700]

describe('a glitch', () => {
  it.each([
    ['one sample up', [...ramp, 90_000, 900, 1000], [[10, 10]]],
    ['one sample down', [...ramp, -90_000, 900, 1000], [[10, 10]]],
    ['two samples alike', [...ramp, 90_000, 88_000, 1000, 1100], [[10, 11]]],
    ['one at the very start of a rest', [0, 5000, 0, 1, 0], [[1, 1]]],
    ['one that nothing follows', [...ramp, 90_000], [[10, 10]]],
  ])('%s is held back', (_name, forces, expected) => {
    const { accepted, glitches } = filter(forces)
    expect(glitches).toEqual(expected)
    expect(accepted.length + glitches.reduce((sum, [from, to]) => sum + to - from + 1, 0)).toBe(forces.length)
  })
})

describe('what is no glitch', () => {
  it.each([
    ['the last sample of a ramp before the fall', [...ramp, 800, 20, 15, 18, 16]],
    ['a fall that rings', [...ramp, 800, -60, 90, -20, 40, 10, 15]],
    ['a step that stays', [0, 0, 0, 500, 500, 500, 500]],
    ['a fall at the very end', [...ramp, 800, 20]],
    ['three samples together', [...ramp, 90_000, 90_000, 90_000, 1100]],
    ['a drop that the drive makes good', [0, 500, 1000, 1500, 2000, 1400, 1700, 2000, 2500]],
  ])('%s passes whole and in order', (_name, forces) => {
    const { accepted, glitches } = filter(forces)
    expect(glitches).toEqual([])
    expect(accepted).toEqual(forces.map((_, i) => i))
  })
})

describe('the limits of a glitch', () => {
  it('are more than ten noise SDs, and more than nothing where no noise is known', () => {
    expect(filter([0, 0, 10, 0]).glitches).toEqual([])
    expect(filter([0, 0, 10.001, 0]).glitches).toEqual([[2, 2]])
    expect(filter([0, 0, 5, 0], null).glitches).toEqual([[2, 2]])
  })

  it('are a return to within 0.3 of the jump', () => {
    expect(filter([0, 0, 100, 30, 30]).glitches).toEqual([[2, 2]])
    expect(filter([0, 0, 100, 30.001, 30]).glitches).toEqual([])
  })

  it('are a second sample of 0.6 of the first, suspect itself', () => {
    expect(filter([0, 0, 100, 60, 0]).glitches).toEqual([[2, 3]])
    expect(filter([0, 0, 100, 59.99, 0]).glitches).toEqual([])
    expect(filter([0, 0, 12, 10, 0]).glitches).toEqual([])
    expect(filter([0, 0, 12, 10.001, 0]).glitches).toEqual([[2, 3]])
  })
})

/** As the rule says it, with all samples at hand. */
function plainly(force: readonly number[], noise: number): { glitches: [number, number][]; passed: number[] } {
  const glitches: [number, number][] = []
  const passed: number[] = []
  let last = Number.NaN
  let largest = 0
  const good = (i: number) => {
    if (!Number.isNaN(last)) largest = Math.max(Math.abs(force[i]! - last), 0.85 * largest)
    last = force[i]!
    passed.push(i)
  }
  const limit = () => Math.max(10 * noise, 4 * largest)
  const isBack = (value: number, jump: number) =>
    Math.abs(value - last) <= Math.max(0.3 * jump, Math.min(limit(), 0.5 * jump))
  let i = 0
  while (i < force.length) {
    const x = force[i]! - last
    if (Number.isNaN(last) || Math.abs(x) <= limit()) {
      good(i)
      i += 1
      continue
    }
    const next = force[i + 1]
    const y = next === undefined ? Number.NaN : next - last
    const twice =
      x > 0 === y > 0 &&
      Math.min(Math.abs(x), Math.abs(y)) >= 0.6 * Math.max(Math.abs(x), Math.abs(y)) &&
      Math.abs(y) > limit()
    const end = force[i + 2]
    if (next === undefined) {
      if (x > 0) glitches.push([i, i])
      else good(i)
      i += 1
    } else if (isBack(next, Math.abs(x))) {
      glitches.push([i, i])
      good(i + 1)
      i += 2
    } else if (twice && end === undefined) {
      if (x > 0) glitches.push([i, i + 1])
      else for (const k of [i, i + 1]) good(k)
      i += 2
    } else if (twice && end !== undefined && isBack(end, Math.min(Math.abs(x), Math.abs(y)))) {
      glitches.push([i, i + 1])
      good(i + 2)
      i += 3
    } else if (twice) {
      for (const k of [i, i + 1]) good(k)
      i += 2
    } else {
      good(i)
      i += 1
    }
  }
  return { glitches, passed }
}

describe('glitches in random streams', () => {
  it.each([0, 1, 4])('are what the rule finds with all samples at hand, at a noise of %i', (noise) => {
    const random = createRandom(40 + noise)
    let found = 0
    for (let trial = 0; trial < 800; trial++) {
      let level = 0
      const forces = Array.from({ length: 25 }, () => {
        level += random.unit() < 0.2 ? random.between(-60, 60) : random.between(-4, 6)
        const hit = random.unit()
        return level + (hit < 0.15 ? random.between(-150, 150) : hit < 0.2 ? 100 : 0)
      })
      const { accepted, glitches } = filter(forces, noise)
      const expected = plainly(forces, noise)
      expect(glitches).toEqual(expected.glitches)
      expect(accepted).toEqual(expected.passed)
      // In kilonewtons, too.
      const inKilo = filter(
        forces.map((newtons) => newtons / 1024),
        noise / 1024,
      )
      expect(inKilo).toEqual({ accepted, glitches })
      found += glitches.length
    }
    expect(found).toBeGreaterThan(200)
  })

  it('come at once where the level at rest is known', () => {
    const glitches: number[][] = []
    const accepted: number[] = []
    const glitchFilter = createGlitchFilter({
      accept: (timeS, _force, _reading, from, to) => accepted.push(...timeS.subarray(from, to)),
      glitch: (...told) => glitches.push(told),
    })
    glitchFilter.setNoise(1)
    glitchFilter.restAt(3)
    const force = Float64Array.of(500, 3, 4)
    const timeS = Float64Array.of(0, 1, 2)
    for (let i = 0; i < 3; i++)
      if (glitchFilter.goodUntil(force, i, i + 1) > i) accepted.push(i)
      else glitchFilter.question(timeS, force, force, i)
    glitchFilter.finish()
    expect(glitches).toEqual([[0, 0, 497]])
    expect(accepted).toEqual([1, 2])
  })
})
