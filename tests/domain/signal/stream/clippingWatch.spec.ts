import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { createClippingWatch } from '#domain/signal/stream/clippingWatch.ts'
import { blockAlone, cutStream } from '#tests/fakes/streams/cutStream.ts'

function watch(
  forces: readonly number[],
  endCodes: [number, number] | null = null,
  capacityN: number | null = null,
  isNoisy = false,
) {
  const clipping = createClippingWatch({ endCodes, capacityN }, isNoisy)
  const force = Float64Array.from(forces)
  const timeS = force.map((_, i) => i)
  for (const [from, to] of cutStream(createRandom(5), forces.length, 7)) {
    const block = blockAlone(force, from, to, 1e7)
    clipping.take(blockAlone(timeS, from, to, 1e7), block, block, from, to)
  }
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

describe('a flat top', () => {
  /** Twenty steps that move, or stand still as often as given, and then so many equal samples at the top. */
  const clippedBy = (equal: number, moving = 25, standing = 0) => {
    const climb = Array.from(
      { length: moving + standing },
      (_, i) => 100 * Math.min(i, moving) + Math.max(0, i - moving),
    )
    const still = Array.from({ length: standing }, (_, k) => [7_000 + 10 * k, 7_000 + 10 * k]).flat()
    return watch([...climb.slice(0, moving), ...still, ...Array<number>(equal).fill(12_000), 300])
  }

  it('has six equal samples at least, after twenty steps or so', () => {
    expect([5, 6].map((equal) => clippedBy(equal).clipped())).toEqual([false, true])
    // The first sample counts as a step: nineteen before the top, and the one to it.
    expect([18, 19].map((moving) => clippedBy(8, moving).clipped())).toEqual([false, true])
  })

  it('is none where more than a tenth of the steps before were nothing', () => {
    // k pairs stand still: k of 25 + 2 k steps.
    expect(clippedBy(8, 25, 3).clipped()).toBe(true)
    expect(clippedBy(8, 25, 4).clipped()).toBe(false)
    // Ten of a hundred steps, and eleven of 102.
    expect([10, 11].map((standing) => clippedBy(8, 80, standing).clipped())).toEqual([true, false])
  })

  it('goes from the first of its samples to the last of the last', () => {
    const clipping = watch([
      ...ramp,
      20_000,
      ...Array<number>(7).fill(30_000),
      20_000,
      ...Array<number>(6).fill(30_000),
      9,
    ])
    expect([clipping.startS(), clipping.endS()]).toEqual([101, 114])
    expect(watch([...ramp, 20_000, 19_000, 20_000], [-20_000, 20_000]).startS()).toBe(100)
    expect(watch([...ramp, 20_000, 19_000, 20_000], [-20_000, 20_000]).endS()).toBe(102)
  })

  it('is no step that is nothing of those that tell of the next one', () => {
    // Thirty steps that move, and two tops of the shortest length: their own steps would be more than a tenth.
    const top = Array<number>(6).fill(12_000)
    const climb = Array.from({ length: 30 }, (_, i) => 100 * i)
    const clipping = watch([...climb, ...top, 9000, 8000, ...top, 7000])
    expect([clipping.startS(), clipping.endS()]).toEqual([30, 43])
  })

  it('may be touched again from above, and is none just below the highest', () => {
    expect(watch([...ramp, 12_000.5, ...Array<number>(9).fill(12_000)]).clipped()).toBe(false)
    expect(watch([...ramp, 12_000, 11_000, ...Array<number>(9).fill(12_000)]).clipped()).toBe(true)
  })
})

describe('a flat top of a noisy signal below the end codes', () => {
  const codes: [number, number] = [-8_388_608, 8_388_607]
  const climb = Array.from({ length: 25 }, (_, i) => 100 * i)
  const noisy = (forces: readonly number[]) => watch(forces, codes, null, true)
  const clippedBy = (equal: number) => noisy([...climb, ...Array<number>(equal).fill(12_000), 300])

  it('has twelve equal samples at least', () => {
    expect([11, 12].map((equal) => clippedBy(equal).clipped())).toEqual([false, true])
    const long = clippedBy(366)
    expect([long.startS(), long.endS()]).toEqual([25, 390])
  })

  it('is none of a signal that often stands still', () => {
    const coarse = Array.from({ length: 200 }, (_, i) => 1000 * Math.floor(i / 20))
    expect(noisy(coarse).clipped()).toBe(false)
  })

  it('is a load that is held where the signal is quiet', () => {
    expect(watch([...climb, ...Array<number>(366).fill(12_000), 300], codes).clipped()).toBe(false)
  })

  it('stands beside readings at a code', () => {
    const both = noisy([...climb, ...Array<number>(20).fill(12_000), 8_388_607, 300])
    expect([both.startS(), both.endS()]).toEqual([25, 45])
    const code = noisy([...climb, ...Array<number>(20).fill(8_388_607), 300, ...Array<number>(20).fill(9e6), 300])
    expect([code.startS(), code.endS()]).toEqual([25, 65])
  })
})

describe('the ends of what is no clipping', () => {
  it('are a load of the capacity, and a reading one short of a code', () => {
    expect(watch([1, 2, 5000], null, 5000).overCapacity()).toBe(false)
    expect(watch([1, 2, 5000.5, 3], null, 5000).overCapacity()).toBe(true)
    expect(watch([19_999, -19_999], [-20_000, 20_000]).clipped()).toBe(false)
  })
})
