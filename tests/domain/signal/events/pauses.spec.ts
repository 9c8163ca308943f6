import { describe, expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { readPauses } from '#domain/signal/events/pauses.ts'
import { lines, madeCurve } from '#tests/fakes/madeCurve.ts'

type Points = readonly (readonly [timeS: number, force: number])[]

/** A curve of straight lines that breaks at its last point but one; every rate at which an amplifier sends. */
function curve(points: Points, intervalS: number, noise = 0) {
  const random = createRandom(7)
  const force = lines(...points)
  const breakS = points.at(-2)![0]
  return madeCurve((t) => force(t) + noise * random.normal(), {
    intervalS,
    endS: points.at(-1)![0],
    noise,
    breakS,
    afterBreak: points.at(-1)![1],
    peak: Math.max(...points.map(([, f]) => f)),
  })
}

const found = (points: Points, intervalS: number, noise = 0) =>
  readPauses(curve(points, intervalS, noise), points.at(-2)![0])
const kinds = (points: Points, intervalS: number, noise = 0) => found(points, intervalS, noise).map(({ kind }) => kind)

const plain: Points = [
  [0, 0],
  [20, 6000],
  [20.01, 200],
]
const held: Points = [
  [0, 0],
  [8, 2400],
  [12, 2330],
  [24.2333, 6000],
  [24.25, 200],
]
const letDown: Points = [
  [0, 0],
  [8, 2400],
  [11, 900],
  [28, 6000],
  [28.01, 200],
]
const plateau: Points = [
  [0, 0],
  [20, 5950],
  [24, 6000],
  [24.01, 200],
]

describe.each([0.1, 0.0125, 0.001])('pauses of a load sampled every %f s', (intervalS) => {
  it.each([0, 6, 60])('are none on a plain ramp, with noise of %f N', (noise) => {
    expect(kinds(plain, intervalS, noise)).toEqual([])
  })

  it('are a hold where the load stands and is driven on', () => {
    for (const noise of [0, 30]) {
      const [hold, ...others] = found(held, intervalS, noise)
      expect(others).toEqual([])
      expect(hold!.kind).toBe('hold')
      expect(Math.abs(hold!.startTimeS - 8)).toBeLessThan(0.6)
      expect(Math.abs(hold!.endTimeS - 12)).toBeLessThan(0.6)
      expect(Math.abs(hold!.fromN! - 2400)).toBeLessThan(60)
      expect(Math.abs(hold!.percentOfPeak! - 40)).toBeLessThan(1)
    }
    // 70 N of 2400 N relax.
    expect(Math.abs(found(held, intervalS)[0]!.dropPercent! - (100 * 70) / 2400)).toBeLessThan(1)
  })

  it('are a reload where the load is let down and driven up again', () => {
    const [reload, ...others] = found(letDown, intervalS)
    expect(others).toEqual([])
    expect(reload!.kind).toBe('reload')
    expect(Math.abs(reload!.startTimeS - 8)).toBeLessThan(0.3)
    // Back at 2400 N after 1500 N at 300 N/s.
    expect(Math.abs(reload!.endTimeS - 16)).toBeLessThan(0.3)
    expect(Math.abs(reload!.dropN! - 1500)).toBeLessThan(70)
  })

  it('are a plateau where the load hardly rises before it falls', () => {
    for (const noise of [0, 30]) {
      const [event, ...others] = found(plateau, intervalS, noise)
      expect(others).toEqual([])
      expect(event).toMatchObject({ kind: 'plateau', dropN: null })
      expect(Math.abs(event!.startTimeS - 20)).toBeLessThan(0.6)
      expect(Math.abs(event!.endTimeS - 24)).toBeLessThan(0.15)
    }
  })

  it('are no plateau when the reading stood at its end', () => {
    const clipped = { ...curve(plateau, intervalS), clipped: true }
    expect(readPauses(clipped, 24)).toEqual([])
  })

  it('are none where the load cracks and recovers', () => {
    const popIn: Points = [
      [0, 0],
      [10, 3000],
      [10.004, 2400],
      [22, 6000],
      [22.01, 200],
    ]
    expect(kinds(popIn, intervalS)).toEqual([])
  })

  it('are none between the strokes of a pump, half a second long', () => {
    const strokes: [number, number][] = [[0, 0]]
    for (let stroke = 1; stroke <= 15; stroke++)
      strokes.push([stroke - 0.5, 400 * stroke], [stroke, 400 * stroke - 5 * stroke])
    expect(kinds([...strokes, [15.45, 6200], [15.46, 200]], intervalS)).toEqual([])
  })
})

describe('the limits of pauses', () => {
  /** 300 N/s, with another pace between two loads, up to 6000 N, where it breaks. */
  function paced(from: number, to: number, takesS: number) {
    const startS = from / 300
    const endS = startS + takesS
    const breakS = endS + (6000 - to) / 300
    return kinds(
      [
        [0, 0],
        [startS, from],
        [endS, to],
        [breakS, 6000],
        [breakS + 0.01, 200],
      ],
      0.0125,
    )
  }

  it('are a pace below a quarter of the usual one', () => {
    expect(paced(2415, 2715, 3.5)).toEqual([])
    expect(paced(2415, 2715, 4.6)).toEqual(['hold'])
  })

  it('are 1.5 s from the step before to the step after', () => {
    // The steps of 30 N on either side take 0.1 s more.
    expect(paced(2415, 2415, 1.25)).toEqual([])
    expect(paced(2415, 2415, 1.6)).toEqual(['hold'])
  })

  it('are 0.05 of the peak, below which a loading is being set up', () => {
    expect(paced(255, 255, 3)).toEqual([])
    expect(paced(345, 345, 3)).toEqual(['hold'])
  })

  it('are a tenth of the load, by which a held one may relax', () => {
    expect(paced(2415, 2415 * 0.906, 8)).toEqual(['hold'])
    expect(paced(2415, 2415 * 0.88, 8)).toEqual(['reload'])
  })

  it('are 0.85 of the peak, below which a plateau never sinks', () => {
    const sinking = (to: number): Points => [
      [0, 0],
      [20, 6000],
      [24, to],
      [24.01, 200],
    ]
    expect(kinds(sinking(5250), 0.0125)).toEqual(['plateau'])
    expect(kinds(sinking(5000), 0.0125)).toEqual([])
  })

  it('are 0.03 of the time to the final drop, which a plateau takes', () => {
    const standing = (takesS: number): Points => [
      [0, 0],
      [100, 5980],
      [100 + takesS, 6000],
      [100.01 + takesS, 200],
    ]
    expect(kinds(standing(2.7), 0.0125)).toEqual([])
    expect(kinds(standing(3.2), 0.0125)).toEqual(['plateau'])
  })
})

describe('pauses', () => {
  it('are measured by the usual pace, not by that of the last tenth', () => {
    // 50 N/s is a sixth of 300 N/s, but half of 100 N/s.
    const slowEnd: Points = [
      [0, 0],
      [8.05, 2415],
      [12.05, 2615],
      [21.3333, 5400],
      [27.3333, 6000],
      [27.34, 200],
    ]
    expect(kinds(slowEnd, 0.0125)).toEqual(['hold'])
  })

  it('are told each on its own where there are several', () => {
    const both: Points = [
      [0, 0],
      [8, 2400],
      [12, 2380],
      [20, 4780],
      [22, 1000],
      [40, 6000],
      [40.01, 200],
    ]
    const [hold, reload, ...others] = found(both, 0.0125)
    expect(others).toEqual([])
    expect(hold).toMatchObject({ kind: 'hold' })
    expect(Math.abs(hold!.endTimeS - 12)).toBeLessThan(0.3)
    expect(Math.abs(hold!.dropN! - 20)).toBeLessThan(15)
    expect(reload).toMatchObject({ kind: 'reload' })
    expect(Math.abs(reload!.startTimeS - 20)).toBeLessThan(0.3)
    expect(Math.abs(reload!.dropN! - 3780)).toBeLessThan(120)
  })

  it('are found up to the peak of a load that is let go without a break, and a rest at the peak is none', () => {
    const unloading = madeCurve(lines([0, 0], [8, 2400], [12, 2400], [20, 4800], [26, 4800], [30, 0]), {
      intervalS: 0.0125,
      endS: 30,
    })
    const events = readPauses(unloading, null)
    expect(events.map(({ kind }) => kind)).toEqual(['hold'])
    expect(Math.abs(events[0]!.startTimeS - 8)).toBeLessThan(0.3)
  })

  it('are told alike at any scale of force and from any level at rest', () => {
    for (const [scale, zero] of [
      [1, 500],
      [0.01, -3],
      [1000, 1e6],
    ] as const) {
      const made = curve(held, 0.0125)
      const moved = {
        ...made,
        force: made.force.map((f) => zero + scale * f),
        zero,
        peak: zero + scale * made.peak,
      }
      const [hold] = readPauses(moved, 24.2333)
      expect(hold).toMatchObject({ kind: 'hold' })
      const [plain] = readPauses(made, 24.2333)
      expect(hold!.startTimeS).toBeCloseTo(plain!.startTimeS, 6)
      expect(hold!.percentOfPeak).toBeCloseTo(plain!.percentOfPeak!, 6)
      expect(hold!.dropPercent).toBeCloseTo(plain!.dropPercent!, 6)
    }
  })

  // The pace of an exponential load is a share of the load, so it is slow at first and never stops.
  it.each([0, 3, 20])('are none where a load sets in slowly, with noise of %f N', (noise) => {
    const random = createRandom(17)
    const sets = (t: number) => (6000 * Math.expm1(t / 10)) / Math.expm1(3)
    const made = (force: (t: number) => number) =>
      madeCurve((t) => force(t) + noise * random.normal(), { intervalS: 0.05, endS: 30, breakS: 30, noise, peak: 6000 })
    expect(readPauses(made(sets), 30)).toEqual([])
    // Driven to the same 300 N at the usual pace, it is held there.
    const heldEarly = lines([0, 0], [1, 330], [6, 335], [25, 6000], [30, 6001])
    expect(readPauses({ ...made(heldEarly), breakS: 25 }, 25)).toMatchObject([{ kind: 'hold' }])
  })

  it('are none in a curve of a few samples', () => {
    expect(
      readPauses(
        madeCurve((t) => 300 * t, { intervalS: 1, endS: 5, breakS: 5, afterBreak: 0 }),
        5,
      ),
    ).toEqual([])
  })
})
