import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createSignalFront } from '#domain/signal/stream/signalFront.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

type Curve = { timeS: Float64Array; force: Float64Array }

/** Everything that the front tells of a stream, cut into blocks up to a length. */
function told({ timeS, force }: Curve, longest: number, settings = {}) {
  const rest: number[] = []
  const restful: number[] = []
  const loaded: number[] = []
  const glitches: [number, number][] = []
  const gaps: [number, number, number][] = []
  let startedWith: number | null = null
  const front = createSignalFront(detectionSettings.parse({ startThresholdN: 50, ...settings }), {
    rest(times, _force, from, to, restfulAt) {
      rest.push(...times.subarray(from, to))
      if (restfulAt >= 0) restful.push(times[restfulAt]!)
    },
    starts: () => {
      startedWith = rest.at(-1)!
    },
    loaded(times, _force, _reading, from, to) {
      loaded.push(...times.subarray(from, to))
      return to
    },
    glitch: (fromS, toS) => glitches.push([fromS, toS]),
    gap: (...gap) => gaps.push(gap),
  })
  for (const [from, to] of cutStream(createRandom(longest), timeS.length, longest))
    for (let i = from; i < to; ) i = front.take(timeS, force, force, i, to)
  front.finish()
  return { rest, restful: restful.at(-1) ?? null, loaded, glitches, gaps, startedWith, front }
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
    expect(atRest(5, { startThresholdN: null })).toBe(false)
  })

  it('says nothing of an empty stream, and all of a short one', () => {
    const none = new Float64Array(0)
    expect(told({ timeS: none, force: none }, 10)).toMatchObject({ rest: [], loaded: [], gaps: [] })
    const short = Float64Array.of(0, 0.01, 0.02)
    expect(told({ timeS: short, force: short.map(() => 0) }, 10).rest).toEqual([0, 0.01, 0.02])
  })
})
