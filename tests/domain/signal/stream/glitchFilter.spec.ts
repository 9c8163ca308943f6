import { describe, expect, it } from 'vitest'
import { createGlitchFilter } from '#domain/signal/stream/glitchFilter.ts'

function filter(forces: readonly number[], noise = 1) {
  const accepted: number[] = []
  const glitches: [number, number][] = []
  const glitchFilter = createGlitchFilter({
    accept: (timeS, _force, _reading, from, to) => accepted.push(...timeS.subarray(from, to)),
    glitch: (from, to) => glitches.push([from, to]),
  })
  glitchFilter.setNoise(noise)
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i)
  for (let i = 0; i < force.length; i++)
    if (glitchFilter.goodUntil(force, i, i + 1) > i) accepted.push(i)
    else glitchFilter.question(timeS, force, force, i)
  glitchFilter.finish()
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
