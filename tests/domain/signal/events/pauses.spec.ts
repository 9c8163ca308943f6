import { describe, expect, it } from 'vitest'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { readPauses } from '#domain/signal/events/pauses.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'
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

  it('are none where most of the load was there with the first sample, so that no pace is usual', () => {
    const force = lines([0, 700], [5, 990], [15, 1000])
    expect(readPauses(madeCurve(force, { intervalS: 0.05, endS: 15, breakS: 15 }), 15)).toEqual([])
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

/*
 * A load of 1000 N that is driven at 16 N/s and read every quarter of a second without noise: its steps are 5 N, from 50 N on, each of
 * 0.3125 s, and slow above 1.25 s, that is below 4 N/s. What is expected follows from the straight lines.
 */
type Part = readonly [takesS: number, paceNPerS: number]
type Given = { zero?: number; laterS?: number; noise?: number; paceNPerS?: number; fallsFromS?: number; peak?: number }

/** The events of a load that is driven in parts, and then on to 1000 N or, where it is to break as it stands, no further. */
function told(parts: readonly Part[], given: Given & { asItStands?: true } = {}): CurveEvent[] {
  const { zero = 0, laterS = 0, noise = 0, paceNPerS = 16, peak = 1000 } = given
  const points: [number, number][] = [[0, 0]]
  const goOn = (takesS: number, pace: number) => {
    const [atS, forceN] = points.at(-1)!
    points.push([atS + takesS, forceN + pace * takesS])
  }
  for (const [takesS, pace] of parts) goOn(takesS, pace)
  if (!given.asItStands) goOn((1000 - points.at(-1)![1]) / paceNPerS, paceNPerS)
  const [breakS, forceN] = points.at(-1)!
  const at = lines(...points, [breakS + 1e-3, given.fallsFromS === undefined ? 0 : forceN], [breakS + 20, forceN])
  const curve = madeCurve((t) => zero + at(t), { intervalS: 0.25, endS: breakS + 20, noise, zero, peak: zero + peak })
  return readPauses(
    { ...curve, timeS: curve.timeS.map((t) => t + laterS), onsetS: laterS, peakS: breakS + laterS },
    (given.fallsFromS ?? breakS) + laterS,
  )
}

describe.each([
  [0, 0],
  [500, 7],
])('pauses to the sample, from a level at rest of %i N, %i s later', (zero, laterS) => {
  const at = { zero, laterS }
  const kindsOf = (parts: readonly Part[], given: Given & { asItStands?: true } = {}) =>
    told(parts, { ...at, ...given }).map(({ kind }) => kind)
  const timesOf = (parts: readonly Part[], given: Given & { asItStands?: true } = {}) =>
    told(parts, { ...at, ...given }).map(({ kind, startTimeS, endTimeS }) => [
      kind,
      Number((startTimeS - laterS).toFixed(6)),
      Number((endTimeS - laterS).toFixed(6)),
    ])

  it('a hold lasts from the first mean after the step below it to the last at its lowest', () => {
    // 400 N at 25 s, 396 N at 26 s and until 29 s.
    const [hold, ...others] = told(
      [
        [25, 16],
        [1, -4],
        [3, 0],
      ],
      at,
    )
    expect(others).toEqual([])
    expect(hold).toMatchObject({ kind: 'hold', startTimeS: 25.25 + laterS, endTimeS: 29 + laterS, dropN: 3 })
    expect(hold!.fromN! - zero).toBe(399)
    expect(hold!.dropPercent).toBeCloseTo(300 / 399, 9)
    expect(hold!.percentOfPeak).toBeCloseTo(39.9, 9)
  })

  it('a let-down lasts until the load goes higher than before', () => {
    // 400 N at 25 s, 320 N at 35 s, 405 N, the next step, at 40.3125 s.
    const [reload, ...others] = told(
      [
        [25, 16],
        [10, -8],
      ],
      at,
    )
    expect(others).toEqual([])
    expect(reload).toMatchObject({ kind: 'reload', startTimeS: 25.25 + laterS, endTimeS: 40.3125 + laterS, dropN: 78 })
    expect(reload!.dropPercent).toBeCloseTo(7800 / 398, 9)
  })

  it('begins where the load was highest, which may be later', () => {
    // 404 N at 26 s, 324 N at 36 s, 405 N at 41.0625 s.
    const [reload] = told(
      [
        [25, 16],
        [1, 4],
        [10, -8],
      ],
      at,
    )
    expect(reload).toMatchObject({ kind: 'reload', startTimeS: 26 + laterS, endTimeS: 41.0625 + laterS, dropN: 80 })
  })

  it('a load that creeps up while it is held has its times by the steps', () => {
    // 400 N at 25 s, 404 N at 33 s, 405 N at 33.0625 s.
    expect(
      timesOf([
        [25, 16],
        [8, 0.5],
      ]),
    ).toEqual([['hold', 25, 33.0625]])
    expect(
      told(
        [
          [25, 16],
          [8, 0.5],
        ],
        at,
      )[0]!.fromN! - zero,
    ).toBe(400.25)
    // Lowest over 1.5 s or longer, it has those of its means.
    expect(
      timesOf([
        [25, 16],
        [0.25, -4],
        [1.5, 0],
      ]),
    ).toEqual([['hold', 25.25, 26.75]])
  })

  it('lasts 1.5 s at least', () => {
    // 405 N at 26.25 s + 5 N / pace.
    expect(
      timesOf([
        [25, 16],
        [1.25, 0],
        [0.25, 20],
      ]),
    ).toEqual([['hold', 25, 26.5]])
    expect(
      kindsOf([
        [25, 16],
        [1.25, 0],
        [0.25, 21],
      ]),
    ).toEqual([])
  })

  it('is a hold down to nine tenths of the load, to the newton', () => {
    expect(
      kindsOf([
        [25, 16],
        [0.25, 0],
        [5, -8],
        [2, 0],
      ]),
    ).toEqual(['hold'])
    expect(
      kindsOf([
        [25, 16],
        [0.25, 0],
        [5.125, -8],
        [2, 0],
      ]),
    ).toEqual(['reload'])
  })

  it('is none of a load that comes up as slowly from its onset, but one where it came to the first step faster', () => {
    // 50 N at a quarter of 16 N/s are there after 12.5 s.
    expect(kindsOf([[60, 2.5]])).toEqual([])
    expect(
      kindsOf([
        [3.25, 16],
        [3, 0],
      ]),
    ).toEqual(['hold'])
    expect(
      kindsOf([
        [12.5, 4],
        [3, 0],
      ]),
    ).toEqual(['hold'])
    expect(
      kindsOf([
        [13, 50 / 13],
        [3, 0],
      ]),
    ).toEqual([])
    expect(
      timesOf([
        [60, 2.5],
        [20, 16],
        [4, 0],
      ]),
    ).toEqual([['hold', 80.25, 84]])
  })

  it('is part of the slow setting in where no more than one step lies between', () => {
    // 100 N at 40 s; then faster over the step to 105 N, or over two.
    expect(
      kindsOf([
        [40, 2.5],
        [0.5, 16],
        [4, 0],
      ]),
    ).toEqual([])
    expect(
      kindsOf([
        [40, 2.5],
        [0.75, 16],
        [4, 0],
      ]),
    ).toEqual(['hold'])
  })

  it('a plateau lasts from its first step to half a sample before the final drop begins', () => {
    // 980 N at 61.25 s, 1000 N at 71.25 s.
    const [plateau, ...others] = told(
      [
        [61.25, 16],
        [10, 2],
      ],
      { ...at, asItStands: true },
    )
    expect(others).toEqual([])
    expect(plateau).toMatchObject({
      kind: 'plateau',
      startTimeS: 61.25 + laterS,
      endTimeS: 71.125 + laterS,
      dropN: null,
    })
    expect(plateau!.fromN! - zero).toBe(999.5)
    // The sample at 71.25 s lies in the fall already.
    const fell = told(
      [
        [61.25, 16],
        [9.95, 2],
        [0.01, -9e4],
      ],
      { ...at, asItStands: true, fallsFromS: 71.35 },
    )
    expect(fell).toMatchObject([{ kind: 'plateau', endTimeS: expect.closeTo(71.225 + laterS, 9) }])
  })

  it('a plateau stands above nine tenths of the peak and sinks to 0.85 of it at most, to the newton', () => {
    const stands = (forceN: number) =>
      kindsOf(
        [
          [forceN / 16, 16],
          [4, 0],
        ],
        { asItStands: true },
      )
    expect(stands(900)).toEqual(['plateau'])
    expect(stands(896)).toEqual([])
    expect(stands(988)).toEqual(['plateau'])
    const sinks = (forS: number) =>
      kindsOf(
        [
          [56.25, 16],
          [0.25, 0],
          [forS, -5],
          [2, 0],
        ],
        { asItStands: true },
      )
    expect(sinks(10)).toEqual(['plateau'])
    expect(sinks(10.25)).toEqual([])
  })

  it('a plateau takes 0.03 of the time from the onset, and 1.5 s', () => {
    // From 995 N at 62.1875 s until U with U - 62.1875 = 0.03 U. At twice the pace 1.5 s are more, from 995 N at 31.1875 s, between
    // 992 N and 996 N.
    const found = (pace: number) => (fallsFromS: number) =>
      kindsOf(
        [
          [996 / pace, pace],
          [15, 0],
        ],
        { paceNPerS: pace, asItStands: true, fallsFromS },
      ).length === 1
    expect(limitOf(found(16), 63, 70)).toBeCloseTo(62.1875 / 0.97 + 0.125, 3)
    expect(limitOf(found(32), 31.5, 40)).toBeCloseTo(31.1875 + 1.5 + 0.125, 3)
  })

  it('slow steps are joined over one fast one to a plateau, not over two', () => {
    // 900 N at 56.25 s, 910 N at 61.25 s, then 5 N or 10 N at 20 N/s, and 10 N more in 5 s.
    const joined: Part[] = [
      [56.25, 16],
      [5, 2],
      [0.25, 20],
      [5, 2],
    ]
    expect(timesOf(joined, { asItStands: true })).toEqual([['plateau', 56.25, 66.375]])
    const apart: Part[] = [
      [56.25, 16],
      [5, 2],
      [0.5, 20],
      [5, 2],
    ]
    expect(timesOf(apart, { asItStands: true })).toEqual([
      ['plateau', 61.75, 66.625],
      ['hold', 56.25, 61.25],
    ])
  })

  it('what is joined is as slow as a slow step altogether, or the last of it stands alone', () => {
    // 3.5 N/s on both sides of a step of 5 N: over 4 N/s altogether. 915 N at 59.475 s.
    const steep: Part[] = [
      [56.25, 16],
      [3, 3.5],
      [0.25, 20],
      [3, 3.5],
    ]
    const [plateau] = timesOf(steep, { asItStands: true })
    expect(plateau).toEqual(['plateau', 59.475, 62.375])
  })

  it('a hold before a plateau stands beside it', () => {
    expect(
      kindsOf(
        [
          [25, 16],
          [4, 0],
          [36.25, 16],
          [10, 2],
        ],
        { asItStands: true },
      ),
    ).toEqual(['plateau', 'hold'])
  })

  it('the usual pace is the median over the steps from 0.1 to 0.9 of the peak', () => {
    // At a fifth of the pace from 100 N on: 80 of 161 steps up to 500 N, 81 up to 505 N.
    expect(
      kindsOf([
        [6.25, 16],
        [125, 3.2],
      ]),
    ).toEqual(['hold'])
    expect(
      kindsOf([
        [6.25, 16],
        [126.5625, 3.2],
      ]),
    ).toEqual([])
  })

  it('the usual pace is known from eight steps on', () => {
    // Steps of 3 σ / sqrt(2) N in means of two samples, the last of 992 N and 996 N: it is nine steps above 50 N up to 944 / 9 N,
    // and from 100 N to 900 N lie eight of them.
    const found = (stepN: number) =>
      kindsOf(
        [
          [25, 16],
          [60, 0],
        ],
        { noise: (stepN * Math.SQRT2) / 3 },
      ).includes('hold')
    expect(limitOf(found, 95, 118)).toBeCloseTo(944 / 9, 1)
  })

  it('a plateau from slow steps on to the highest may rise as fast as one from the highest alone', () => {
    // 900 N from 56.25 s on, by one step and nearly two up after two thirds of the time: the slope of such a step is 6 · 2/9 of its
    // height over the time, 6.3 N/s, of which 8 N/s are allowed. A hold stands far before it.
    const stepped = (heldS: number): Part[] => [
      [25, 16],
      [4, 0],
      [31.25, 16],
      [heldS, 0],
      [0.25, 38],
      [0.5, 0],
    ]
    expect(timesOf(stepped(1.35), { asItStands: true }).map(([kind, startS]) => [kind, startS])).toEqual([
      ['plateau', 60.25],
      ['hold', 25.25],
    ])
  })

  it('every pause of several slow steps is one', () => {
    // Three steps up at 2 N/s, twice: from 400 N to 415 N, and from 655 N to 670 N.
    expect(
      timesOf([
        [25, 16],
        [8, 2],
        [15, 16],
        [8, 2],
      ]),
    ).toEqual([
      ['hold', 25, 32.5],
      ['hold', 47.9375, 55],
    ])
  })

  it('begins and ends where the load is within what noise explains of its highest and its lowest', () => {
    // Three noise SDs of a mean of two samples are 1 N.
    const noise = Math.SQRT2 / 3
    // 404 N at 26 s, down to 324 N at 36 s: within 1 N of the highest from 25.75 s on.
    expect(
      timesOf(
        [
          [25, 16],
          [1, 4],
          [10, -8],
        ],
        { noise },
      ),
    ).toEqual([['reload', 25.75, 41.0625]])
    // 396 N from 26 s to 29 s, then 2 N/s up: within 1 N of the lowest until 29.5 s.
    expect(
      timesOf(
        [
          [25, 16],
          [1, -4],
          [3, 0],
          [1.5, 2],
        ],
        { noise },
      ),
    ).toEqual([['hold', 25.25, 29.5]])
  })

  it('a plateau rises at less than half of the usual pace', () => {
    // With steps of 50 N, as noise asks for: from 950 N on at a share of 4 N/s.
    const found = (share: number) =>
      kindsOf(
        [
          [237.5, 4],
          [20, 4 * share],
        ],
        { noise: (50 * Math.SQRT2) / 3, asItStands: true },
      ).includes('plateau')
    expect(Math.abs(limitOf(found, 0.1, 0.75) - 0.5)).toBeLessThan(0.02)
  })
})
