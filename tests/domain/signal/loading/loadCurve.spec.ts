import { describe, expect, it } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createLoadCurve } from '#domain/signal/loading/loadCurve.ts'
import { createLoadMemory } from '#domain/signal/loading/loadMemory.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
import { cutStream } from '#tests/fakes/streams/cutStream.ts'

const usualHz = 200
const threshold = 20

type Course = {
  load: (timeS: number) => number
  lengthS?: number
  /** Level at rest. */
  zero?: number
  settings?: Parameters<typeof detectionSettings.parse>[0]
  /** Blocks are so long at most. */
  longest?: number
  isNoisy?: boolean
  rateHz?: number
  /** Stream time at which it begins; the load is given since then. */
  onsetS?: number
}

/** Follows a load above its level at rest, without noise; onset at 0 s, where the load curve takes over. */
function follow({
  load,
  lengthS = 10,
  zero = 0,
  settings = {},
  longest = 100_000,
  isNoisy = false,
  ...course
}: Course) {
  const { rateHz = usualHz, onsetS = 0 } = course
  const memory = createLoadMemory()
  const intervalS = 1 / rateHz
  memory.begin({ zero, noise: 0, intervalS })
  const curve = createLoadCurve(detectionSettings.parse(settings), memory, {
    onsetS,
    zero,
    noise: 0,
    isNoisy,
    threshold,
    intervalS,
    highest: zero,
    highestS: onsetS,
  })
  const timeS = Float64Array.from({ length: lengthS * rateHz }, (_, i) => onsetS + i / rateHz)
  const force = timeS.map((_, i) => zero + load(i / rateHz))
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
    expect(broken.fallS).toBeCloseTo(1 / usualHz, 9)
  })

  it('is over half a second after the break, as the settings say, and takes no more', () => {
    expect(broken.over).toBe(true)
    expect(broken.takenS).toBeCloseTo(2.5 + 1 / usualHz, 9)
    expect(follow({ load: ramp(2, () => 100), settings: { postBreakS: 2 } }).takenS).toBeCloseTo(4 + 1 / usualHz, 9)
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
    const held = follow({ load: ramp(2, (_since, peak) => 0.99 * peak), lengthS: 2000, rateHz: 20 })
    expect(held).toMatchObject({ outcome: 'unloading', over: true })
    expect(held.takenS).toBeCloseTo(1802, 1)
  })
})

describe('clipping', () => {
  const flat = (t: number) => (t > 3 ? 100 : Math.min(2000, 1000 * t))

  it('is looked for while the load goes up, not in what is left after the break', () => {
    expect(follow({ load: flat }).clipped).toBe(true)
    expect(follow({ load: ramp(2, () => 100) }).clipped).toBe(false)
    const settings = { endCodes: [-8000, 8000] as [number, number] }
    expect(follow({ load: flat, settings }).clipped).toBe(false)
    expect(follow({ load: flat, settings, isNoisy: true }).clipped).toBe(true)
  })
})

describe('a loading in blocks', () => {
  const random = createRandom(77)
  const noise = Array.from({ length: 20_000 }, () => 3 * random.normal())
  const wild = (t: number) => {
    const at = noise[Math.round(t * usualHz)]!
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

describe.each([
  [0, 0],
  [700, 0],
  [-300, 50],
])('with a level at rest of %s N and an onset at %s s', (zero, onsetS) => {
  const given = { zero, onsetS }

  it('a break is a fall of 0.4 of the load, and an unloading begins at 0.05 of it', () => {
    const outcome = (left: number) => follow({ ...given, load: ramp(2, () => left) }).outcome
    expect(limitOf((left) => outcome(left) === 'break', 1000, 1500)).toBeCloseTo(1200, 2)
    const isOver = (left: number) =>
      follow({ ...given, load: ramp(2, (since) => Math.max(left, 2000 - 500 * since)), lengthS: 8 }).over
    expect(limitOf(isOver, 50, 200)).toBeCloseTo(100, 3)
  })

  it('a loading has a peak of three thresholds, just so, and is there within 0.2 s up to 0.8 of its peak', () => {
    const outcome = (peakN: number) => follow({ ...given, load: (t) => (t <= 2 ? (peakN / 2) * t : 0) }).outcome
    expect([59.9, 60].map(outcome)).toEqual(['none', 'break'])
    const driven = (withinS: number) =>
      follow({ ...given, load: (t) => (t > 3 ? 0 : 700 * Math.min(1, t / withinS)), rateHz: 2000 }).outcome === 'break'
    // To one mean of 5 ms or so: 0.2 s / 0.8 = 0.25 s.
    expect(Math.abs(limitOf(driven, 0.15, 0.4) - 0.25)).toBeLessThan(0.006)
  })
})

describe('what is known of a loading', () => {
  it('is the mean load from 0.1 s to 0.3 s after the sample with which the fall was noticed', () => {
    // It was noticed one sample after the peak, 400 N/s down from 300 N there. The samples 26 to 76 after that lie in between.
    const { afterBreak } = follow({ load: ramp(2, (since) => 300 - 400 * (since - 1 / 256)), rateHz: 256 })
    expect(afterBreak).toBeCloseTo(300 - (400 * 51) / 256, 6)
  })

  it('is the slope up to the peak, also where that ends a fall which was none, or where the stream is cut off', () => {
    // 10 samples a second: 2000 N after 2 s, down to 300 N, and in four steps of 430 N up to 2020 N, above the peak at once.
    const forces = [300, 730, 1160, 1590, 2020]
    const load = (t: number) => {
      const i = Math.round((t - 2.1) * 10)
      return i < 0 ? 1000 * t : (forces[i] ?? 100)
    }
    const popIn = follow({ load, rateHz: 10 })
    expect(popIn).toMatchObject({ outcome: 'break', peak: 2020 })
    expect(popIn.loadingRate).toBeCloseTo(4300, 6)
    expect(follow({ load: ramp(2, () => 1990), lengthS: 3 }).loadingRate).toBeCloseTo(1000, 6)
  })
})
