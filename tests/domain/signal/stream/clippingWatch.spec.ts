import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createClippingWatch } from '#domain/signal/stream/clippingWatch.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

function watch(forces: readonly number[], endCodes: [number, number] | null = null, capacityN: number | null = null) {
  const clipping = createClippingWatch({ endCodes, capacityN })
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i)
  for (const [from, to] of cutStream(createRandom(5), forces.length, 7)) clipping.take(timeS, force, force, from, to)
  return clipping
}

const random = createRandom(8)
const ramp = Array.from({ length: 100 }, (_, i) => Math.round(100 * i + 10 * random.normal()))

describe('clipping', () => {
  it('is a reading at either end code', () => {
    expect(watch([...ramp, 20_000, 19_000], [-20_000, 20_000]).clipped()).toBe(true)
    expect(watch([...ramp, -20_000], [-20_000, 20_000]).clipped()).toBe(true)
    expect(watch(ramp, [-20_000, 20_000]).clipped()).toBe(false)
  })

  it('without end codes is a flat top, from its first sample to its last', () => {
    const clipping = watch([...ramp, ...Array.from({ length: 10 }, () => 12_000), 300])
    expect(clipping.clipped()).toBe(true)
    expect(clipping.startS()).toBe(100)
    expect(clipping.endS()).toBe(109)
  })

  it('is no flat stretch below the highest force, and no coarse converter that often stands still', () => {
    expect(watch([...ramp, 20_000, ...Array.from({ length: 10 }, () => 12_000)]).clipped()).toBe(false)
    const coarse = Array.from({ length: 100 }, (_, i) => 1000 * Math.floor(i / 8))
    expect(watch(coarse).clipped()).toBe(false)
  })

  it('is apart from a load above capacity', () => {
    const over = watch(ramp, null, 5000)
    expect(over.overCapacity()).toBe(true)
    expect(over.clipped()).toBe(false)
    expect(watch(ramp, null, 50_000).overCapacity()).toBe(false)
  })
})
