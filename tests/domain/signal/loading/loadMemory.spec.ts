import { describe, expect, it } from 'vitest'
import { createLoadMemory } from '#domain/signal/loading/loadMemory.ts'

const timeS = Float64Array.from({ length: 100 }, (_, i) => i / 100)
const force = timeS.map((_, i) => i)

describe('what is remembered of a loading', () => {
  const forces = (memory: ReturnType<typeof createLoadMemory>) => [...memory.means.means().force]

  it('is every sample, and as means those after the last that was no different from rest', () => {
    const memory = createLoadMemory()
    memory.takeRest(timeS, force, 0, 4, -1)
    expect(forces(memory)).toEqual([0, 1, 2, 3])
    memory.takeRest(timeS, force, 4, 9, 6)
    expect(forces(memory)).toEqual([7, 8])
    memory.takeRest(timeS, force, 9, 11, -1)
    expect(forces(memory)).toEqual([7, 8, 9, 10])
    memory.takeRest(timeS, force, 11, 13, 12)
    expect(forces(memory)).toEqual([])
    expect(memory.recent.count()).toBe(13)
    memory.takeRest(timeS, force, 13, 14, -1)
    // Its place in the arrays says nothing: a block may begin at index 0 again.
    memory.takeRest(timeS, force, 0, 3, 0)
    expect(forces(memory)).toEqual([1, 2])
    memory.begin({ zero: 0, noise: 0, intervalS: 0.01 })
    memory.take(timeS, force, 3, 5)
    expect(forces(memory)).toEqual([1, 2, 3, 4])
    expect(memory.recent.count()).toBe(19)
  })

  it('is how far it has come down in sudden steps since it began, by means of 5 ms', () => {
    const memory = createLoadMemory()
    const stepped = Float64Array.from({ length: 100 }, (_, i) => (i < 40 ? 1000 : 700))
    memory.takeRest(timeS, stepped, 0, 60, -1)
    expect(memory.suddenlyFallen()).toBe(0)
    // Of 4 samples every 1.25 ms: 8 x 60 N / 2 = 240 N are needed for a step above the noise, 480 N for one of single samples.
    const begun = (noise: number) => {
      const own = createLoadMemory()
      own.begin({ zero: 0, noise, intervalS: 0.00125 })
      own.take(
        timeS.map((t) => t / 8),
        stepped,
        0,
        100,
      )
      return own.suddenlyFallen()
    }
    expect([60, 90].map(begun)).toEqual([300, 0])
  })
})
