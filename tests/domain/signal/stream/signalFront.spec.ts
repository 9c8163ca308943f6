import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createSignalFront } from '#domain/signal/stream/signalFront.ts'
import { blockAlone, cutStream } from '#tests/fakes/streams/cutStream.ts'

type Curve = { timeS: Float64Array; force: Float64Array }

/** Everything that the front tells of a stream, cut into blocks up to a length. */
function told({ timeS, force }: Curve, longest: number, settings = {}, stopS = Number.POSITIVE_INFINITY) {
  const rest: number[] = []
  const restful: number[] = []
  const loaded: number[] = []
  const glitches: [number, number][] = []
  const gaps: [number, number, number][] = []
  const starts: number[] = []
  const front = createSignalFront(detectionSettings.parse({ startThresholdN: 50, ...settings }), {
    rest(times, _force, from, to, restfulAt) {
      rest.push(...times.subarray(from, to))
      expect(to).toBeGreaterThan(from)
      if (restfulAt !== -1) restful.push(times[restfulAt]!)
    },
    starts: () => starts.push(rest.at(-1)!),
    loaded(times, _force, _reading, from, to) {
      expect(to).toBeGreaterThan(from)
      loaded.push(...times.subarray(from, to))
      if (times[to - 1]! >= stopS) front.stop()
      return to
    },
    glitch: (fromS, toS) => glitches.push([fromS, toS]),
    gap: (...gap) => gaps.push(gap),
  })
  for (const [from, to] of cutStream(createRandom(longest), timeS.length, longest))
    for (let i = from; i < to; ) {
      const block = blockAlone(force, from, to, 1e6)
      const next = front.take(blockAlone(timeS, from, to, 1e6), block, block, i, to)
      if (next === i) return ended()
      i = next
    }
  front.finish()
  return ended()

  function ended() {
    expect(starts.length).toBeLessThanOrEqual(1)
    return { rest, restful: restful.at(-1) ?? null, loaded, glitches, gaps, startedWith: starts[0] ?? null, front }
  }
}

/** Rest for two seconds, then 100 N/s, every 10 ms; without the samples in some spans. */
function ramp(missing: readonly (readonly [fromS: number, toS: number])[] = []): Curve {
  const timeS = Float64Array.from({ length: 500 }, (_, i) => i / 100).filter(
    (t) => !missing.some(([fromS, toS]) => t > fromS + 1e-9 && t < toS - 1e-9),
  )
  return { timeS, force: timeS.map((t, i) => (t <= 2 ? 0.1 * (i % 3) : 100 * (t - 2))) }
}

describe.each([1, 7, 1000])('the front of a stream in blocks up to %i', (longest) => {
  it('hands on every sample once, in order, and tells where the start of loading', () => {
    const curve = ramp()
    const { rest, loaded, startedWith, restful, gaps, glitches } = told(curve, longest)
    expect([...rest, ...loaded]).toEqual([...curve.timeS])
    // 50 N are passed after 2.5 s; the hold is 0.05 s.
    expect(startedWith).toBeCloseTo(2.56, 9)
    expect(rest.at(-1)).toBe(startedWith)
    // The last that is no different from rest: a running mean below a noise SD of 0.1 N or so.
    expect(restful).toBeGreaterThanOrEqual(2)
    expect(restful).toBeLessThan(2.03)
    expect([gaps, glitches]).toEqual([[], []])
  })

  it('tells of samples that are missing, at rest, in the first ones and under load', () => {
    const { gaps } = told(
      ramp([
        [0.1, 0.13],
        [1, 1.02],
        [3, 3.5],
      ]),
      longest,
    )
    expect(gaps.map((gap) => gap.map((value) => Math.round(value * 100)))).toEqual([
      [10, 13, 200],
      [100, 102, 100],
      [300, 350, 4900],
    ])
  })

  it('holds back a lone spike and tells of it, at rest and under load', () => {
    const curve = ramp()
    for (const at of [150, 350]) curve.force[at] = 9000
    const { rest, loaded, glitches } = told(curve, longest)
    expect(glitches).toEqual([
      [1.5, 1.5],
      [3.5, 3.5],
    ])
    expect(rest.length + loaded.length).toBe(498)
    expect([...rest, ...loaded]).not.toContain(3.5)
    expect(rest).toContain(1.51)
    expect(rest).not.toContain(1.5)
  })

  it('takes a small step that stays for rest, of which the last sample before it is restful', () => {
    const timeS = Float64Array.from({ length: 400 }, (_, i) => i / 100)
    const force = timeS.map((t, i) => 0.1 * (i % 3) + (t < 2 ? 0 : 30))
    const { rest, restful, startedWith } = told({ timeS, force }, longest)
    expect(rest).toEqual([...timeS])
    expect([restful, startedWith]).toEqual([1.99, null])
  })

  it('says nothing more once it was stopped', () => {
    const curve = ramp()
    const { loaded, startedWith } = told(curve, longest, {}, 3)
    expect(loaded.length).toBeGreaterThan(0)
    expect(startedWith).toBeCloseTo(2.56, 9)
    // The block in which it was stopped is its last.
    expect(loaded.at(-1)).toBeGreaterThanOrEqual(3)
    expect(loaded.filter((timeS) => timeS >= 3).length).toBeLessThanOrEqual(longest)
  })
})

describe('a stream full of glitches and gaps', () => {
  it('is told the same however it is cut', () => {
    const random = createRandom(31)
    const timeS = Float64Array.from({ length: 3000 }, (_, i) => i / 100).filter(() => random.unit() < 0.97)
    const force = timeS.map((t) => {
      const hit = random.unit() < 0.03 ? random.between(-3000, 3000) : 0
      return random.normal() + (t < 5 ? 0 : 100 * (t - 5)) + hit + (Math.floor(t) % 7 === 6 ? 200 : 0)
    })
    const { front: _one, ...singly } = told({ timeS, force }, 1)
    expect(singly.glitches.length).toBeGreaterThan(20)
    expect(singly.gaps.length).toBeGreaterThan(20)
    const told1 = singly.rest.length + singly.loaded.length
    const ofGlitches = singly.glitches.map(([fromS, toS]) => timeS.filter((t) => t >= fromS && t <= toS).length)
    expect(told1 + ofGlitches.reduce((sum, count) => sum + count, 0)).toBe(timeS.length)
    for (const longest of [2, 5, 40, 3000]) {
      const { front: _other, ...inBlocks } = told({ timeS, force }, longest)
      expect(inBlocks).toEqual(singly)
    }
  })
})

describe('the front of a stream', () => {
  it('takes a rise over the first samples for rest up to a quarter of the threshold', () => {
    // 21 samples over 0.2 s; from the middle of the first third to that of the last they rise by 0.14 s of the slope.
    const atRest = (slope: number, settings = {}) => {
      const timeS = Float64Array.from({ length: 21 }, (_, i) => i / 100)
      const { front } = told({ timeS, force: timeS.map((t) => slope * t) }, 1000, settings)
      // The level is the middle of the samples then, and 0 N otherwise.
      return front.watch.level() > 0.05 * slope
    }
    expect([12 / 0.14, 13 / 0.14].map((slope) => atRest(slope))).toEqual([true, false])
    // 0.002 of the capacity where no threshold is given, and nothing where that is unknown too.
    const byCapacity = { startThresholdN: null, capacityN: 25_000 }
    expect([12 / 0.14, 13 / 0.14].map((slope) => atRest(slope, byCapacity))).toEqual([true, false])
    for (const slope of [1, 5]) expect(atRest(slope, { startThresholdN: null })).toBe(false)
  })

  it('has the onset of a load that was there before it at its first sample', () => {
    const timeS = Float64Array.from({ length: 300 }, (_, i) => 7 + i / 100)
    const { front, startedWith } = told({ timeS, force: timeS.map((t) => 100 * t) }, 40)
    expect(startedWith).not.toBeNull()
    expect(front.watch.onsetS()).toBe(7)
  })

  it('says nothing of an empty stream, and all of a short one', () => {
    const none = new Float64Array(0)
    expect(told({ timeS: none, force: none }, 10)).toMatchObject({ rest: [], loaded: [], gaps: [] })
    const short = Float64Array.of(0, 0.01, 0.02)
    expect(told({ timeS: short, force: short.map(() => 0) }, 10).rest).toEqual([0, 0.01, 0.02])
  })
})
