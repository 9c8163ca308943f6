import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadCurve } from '#domain/signal/loading/loadCurve.ts'
import { createLoadMemory } from '#domain/signal/loading/loadMemory.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const rateHz = 200
const threshold = 20

type Course = {
  load: (timeS: number) => number
  lengthS?: number
  /** Level at rest. */
  zero?: number
  settings?: Parameters<typeof detectionSettings.parse>[0]
  /** Blocks are so long at most. */
  longest?: number
}

/** Follows a load above its level at rest, without noise; onset at 0 s, where the load curve takes over. */
function follow({ load, lengthS = 10, zero = 0, settings = {}, longest = 100_000 }: Course) {
  const memory = createLoadMemory()
  const intervalS = 1 / rateHz
  memory.begin({ zero, noise: 0, intervalS })
  const curve = createLoadCurve(detectionSettings.parse(settings), memory, {
    onsetS: 0,
    zero,
    noise: 0,
    threshold,
    intervalS,
    highest: zero,
    highestS: 0,
  })
  const timeS = Float64Array.from({ length: lengthS * rateHz }, (_, i) => i / rateHz)
  const force = timeS.map((t) => zero + load(t))
  let taken = 0
  for (const [from, to] of cutStream(createRandom(longest), timeS.length, longest)) {
    if (curve.over()) break
    taken = curve.take(timeS, force, force, from, to)
  }
  const { clipping, ...end } = curve.end()
  return { ...end, clipped: clipping.clipped(), over: curve.over(), takenS: taken / rateHz }
}

/** A ramp of 1000 N/s for so long, then what comes after it. */
const ramp = (untilS: number, after: (sinceS: number, peakN: number) => number) => (t: number) =>
  t <= untilS ? 1000 * t : after(t - untilS, 1000 * untilS)

describe('a loading that ends in a break', () => {
  const broken = follow({ load: ramp(2, () => 100) })

  it('has the highest sample for peak, and the break at the last sample before the fall', () => {
    expect(broken).toMatchObject({ outcome: 'break', peak: 2000, peakS: 2, breakS: 2, afterBreak: 100 })
  })

  it('has the slope of the ramp for loading rate, and one interval for a fall that is over with the next sample', () => {
    expect(broken.loadingRate).toBeCloseTo(1000, 6)
    expect(broken.fallS).toBeCloseTo(1 / rateHz, 9)
  })

  it('is over half a second after the break, as the settings say, and takes no more', () => {
    expect(broken.over).toBe(true)
    expect(broken.takenS).toBeCloseTo(2.5 + 1 / rateHz, 9)
    expect(follow({ load: ramp(2, () => 100), settings: { postBreakS: 2 } }).takenS).toBeCloseTo(4 + 1 / rateHz, 9)
  })

  it('is the same above any level at rest', () => {
    const { peak, afterBreak, outcome } = follow({ load: ramp(2, () => 100), zero: 700 })
    expect([outcome, peak, afterBreak]).toEqual(['break', 2700, 800])
  })

  it('needs a fall of breakDropShare, within breakDropWithinS', () => {
    expect(follow({ load: ramp(2, () => 1199) }).outcome).toBe('break')
    expect(follow({ load: ramp(2, () => 1201) }).outcome).toBe('unloading')
    expect(follow({ load: ramp(2, () => 1201), settings: { breakDropShare: 0.39 } }).outcome).toBe('break')
    // 40 % in 0.4 s, in steps too small to be sudden.
    const slow = ramp(2, (since, peak) => Math.max(600, peak * (1 - since)))
    expect(follow({ load: slow }).outcome).toBe('unloading')
    expect(follow({ load: slow, settings: { breakDropWithinS: 0.5 } }).outcome).toBe('break')
  })

  it('may come in sudden steps that no window holds together', () => {
    const steps = ramp(4, (since, peak) => peak * (1 - 0.15 * Math.min(5, Math.ceil(since))))
    expect(follow({ load: steps }).outcome).toBe('break')
  })
})

describe('a fall that the load recovers from', () => {
  // Stick-slip and pop-ins drop and go on: what comes back to 0.9 of the peak goes on being loaded, and may go higher.
  const popIn = (back: number) => ramp(2, (since, peak) => (since < 0.2 ? 0.4 * peak : back * peak))

  it('was no break, and the peak is the highest of what follows', () => {
    const load = (t: number) => (t > 6 ? 100 : t > 2 && t < 2.2 ? 800 : 1000 * t)
    expect(follow({ load })).toMatchObject({ outcome: 'break', peak: 6000, peakS: 6, breakS: 6 })
  })

  it('is one of a load that is back at 0.9 of the peak, not short of it', () => {
    expect(follow({ load: popIn(0.901), lengthS: 5 }).over).toBe(false)
    // Below that the mean after the fall decides: from 0.1 to 0.3 s, half of it at 0.4 and half at 0.7 of the peak, below 0.6.
    expect(follow({ load: popIn(0.7), lengthS: 5 })).toMatchObject({ outcome: 'break', over: true })
  })

  it('of a lower load is measured against its own mean before the fall', () => {
    // Held at half its peak of 2000 N: a fall of 800 N, 0.4 of the peak, leaves 200 N of 1000 N.
    const held = (left: number) => ramp(2, (since) => (since < 1 ? 2000 - 1000 * since : since < 3 ? 1000 : left))
    expect(follow({ load: held(190) })).toMatchObject({ outcome: 'break', peak: 2000 })
  })
})

describe('a loading without a break', () => {
  it('is an unloading when it is let down, over when it has been below 0.05 of the peak for a second', () => {
    const down = follow({ load: ramp(2, (since, peak) => Math.max(0, peak - 500 * since)) })
    expect(down).toMatchObject({ outcome: 'unloading', peak: 2000, breakS: null, afterBreak: null, fallS: null })
    // 100 N are passed 3.8 s after the peak.
    expect(down.takenS).toBeCloseTo(2 + 3.8 + 1, 1)
  })

  it('is none below three thresholds, or when a small load was there all at once', () => {
    expect(follow({ load: (t) => (t < 2 ? 29.9 * t : 0) }).outcome).toBe('none')
    expect(follow({ load: (t) => (t < 2 ? 30.1 * t : 0) }).outcome).not.toBe('none')
    const weight = (loadN: number, withinS: number) => (t: number) => (t > 3 ? 0 : loadN * Math.min(1, t / withinS))
    // 0.8 of it within 0.16 s, or within 0.24 s; 40 thresholds are 800 N.
    expect(follow({ load: weight(790, 0.2) }).outcome).toBe('none')
    expect(follow({ load: weight(790, 0.3) }).outcome).toBe('break')
    expect(follow({ load: weight(810, 0.2) }).outcome).toBe('break')
  })

  it('goes on while the load is held near its peak, for half an hour', () => {
    const held = follow({ load: ramp(2, (_since, peak) => 0.99 * peak), lengthS: 2000 })
    expect(held).toMatchObject({ outcome: 'unloading', over: true })
    expect(held.takenS).toBeCloseTo(1802, 1)
  })
})

describe('clipping', () => {
  const flat = (t: number) => (t > 3 ? 100 : Math.min(2000, 1000 * t))

  it('is looked for while the load goes up, not in what is left after the break', () => {
    expect(follow({ load: flat }).clipped).toBe(true)
    expect(follow({ load: ramp(2, () => 100) }).clipped).toBe(false)
    expect(follow({ load: flat, settings: { endCodes: [-8000, 8000] } }).clipped).toBe(false)
  })
})

describe('a loading in blocks', () => {
  const random = createRandom(77)
  const noise = Array.from({ length: 20_000 }, () => 3 * random.normal())
  const wild = (t: number) => {
    const at = noise[Math.round(t * rateHz)]!
    if (t > 40) return 90 + at
    const pump = 500 * t + 200 * Math.sin(3 * t)
    return (t > 12 && t < 12.3) || (t > 25 && t < 25.1) ? 0.3 * pump : pump + at
  }

  it('comes to the same however the stream is cut', () => {
    const whole = follow({ load: wild, lengthS: 60 })
    expect(whole).toMatchObject({ outcome: 'break', over: true })
    for (const longest of [1, 9, 300, 3000]) expect(follow({ load: wild, lengthS: 60, longest })).toEqual(whole)
  })
})
