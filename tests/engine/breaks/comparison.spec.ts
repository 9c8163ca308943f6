import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { type ComparisonRequest, comparison } from '#contract/breaks/comparison.ts'
import { Trouble } from '#contract/errors.ts'
import type { Progress } from '#contract/tasks.ts'
import { makeComparison } from '#engine/breaks/comparison.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { header, morning, session } from '../../archive/storedStudy.ts'
import { keepCurve, type MadeCurve } from '../storedCurves.ts'

let archive: Archive
let remove = async () => {}
beforeEach(async () => {
  ;({ archive, remove } = await temporaryArchive())
})
afterEach(() => remove())

const going = new AbortController().signal
const plain: MadeCurve = { restMs: 500, climbMs: 4000, afterMs: 300, peakCounts: 400_000 }

/** Curves that differ a little in peak, rest and length, so that each has its own distance from the median. */
async function keepSeries(count: number, change: Partial<MadeCurve> = {}): Promise<number[]> {
  const ids: number[] = []
  for (let i = 0; i < count; i++)
    ids.push(
      await keepCurve(archive, {
        ...plain,
        restMs: 500 + 37 * i,
        afterMs: 300 + 11 * i,
        peakCounts: 400_000 + 1500 * ((i * 3) % count),
        ...change,
      }),
    )
  return ids
}

async function compare(breakIds: number[], change: Partial<ComparisonRequest> = {}) {
  const request = { breakIds, alignAt: 'onset', normalising: 'no', ...change } as const
  const made = await makeComparison(archive, request, () => {}, going)
  return comparison.parse(made)
}
const placeOf = (grid: Float64Array, x: number) =>
  grid.reduce((best, at, i) => (Math.abs(at - x) < Math.abs(grid[best]! - x) ? i : best), 0)

describe('makeComparison', () => {
  test('lays curves of different rests over each other, with the median of those that reach a place', async () => {
    const ids = await keepSeries(5)
    const { curves, grid, median, lower, upper, curvesAt, unit, timeUnit, leftOut } = await compare(ids)
    expect([unit, timeUnit, leftOut]).toEqual(['N', 's', []])
    expect(curves.map(({ breakId }) => breakId)).toEqual(ids)
    expect(curves.map(({ originS }) => originS)).toEqual([0.5, 0.537, 0.574, 0.611, 0.648])
    expect(curves.every(({ timeUnit, forceUnit }) => timeUnit === 1 && forceUnit === 1)).toBe(true)
    // By hand: peaks are 4000, 4045, 4015, 4060, 4030 N; each climbs for 4 s, so after 2 s each is at half its peak.
    const half = placeOf(grid, 2)
    const at = (peakN: number) => (peakN * (1000 * grid[half]! + 1)) / 4000
    expect(median[half]).toBeCloseTo(at(4030), 6)
    expect(lower[half]).toBeCloseTo(at(4015), 6)
    expect(upper[half]).toBeCloseTo(at(4045), 6)
    expect(curvesAt[half]).toBe(5)
    expect(grid.every((x, i) => i === 0 || x > grid[i - 1]!)).toBe(true)
  })

  test('aligned at the peak, the median at 0 is the median of the peaks', async () => {
    const { grid, median, curves } = await compare(await keepSeries(5), { alignAt: 'peak' })
    expect(median[grid.indexOf(0)]).toBeCloseTo(4030, 9)
    expect(curves.map(({ peakN }) => peakN)).toEqual([4000, 4045, 4015, 4060, 4030])
  })

  test('aligned at the break, curves of any length end together', async () => {
    const slow = await keepCurve(archive, { ...plain, climbMs: 9000 })
    const { curves } = await compare([...(await keepSeries(3)), slow], { alignAt: 'break' })
    expect(curves.map(({ originS }) => originS)).toEqual([4.499, 4.536, 4.573, 9.499])
  })

  test('normalised in force and time, ramps of any height and length are one', async () => {
    const ids = [
      await keepCurve(archive, plain),
      await keepCurve(archive, { ...plain, climbMs: 9000, peakCounts: 90_000 }),
      await keepCurve(archive, { ...plain, climbMs: 2000, peakCounts: 700_000 }),
    ]
    const made = await compare(ids, { normalising: 'force-and-time' })
    expect([made.unit, made.timeUnit]).toEqual(['%', '%'])
    const half = placeOf(made.grid, 50)
    // A sample is 0.01 to 0.05 % of the climb.
    expect(made.median[half]).toBeCloseTo(made.grid[half]!, 0)
    expect(made.upper[half]! - made.lower[half]!).toBeLessThan(0.06)
    expect(made.curves.map(({ forceUnit }) => forceUnit)).toEqual([40, 9, 70])
  })

  test('points out the curve that lies far from the others, and where it lies farthest', async () => {
    const ids = await keepSeries(7)
    const odd = await keepCurve(archive, { ...plain, bulge: { fromMs: 2000, toMs: 2600, counts: -90_000 } })
    const { curves, notJudged } = await compare([...ids, odd])
    expect(notJudged).toBeNull()
    expect(curves.filter(({ outlying }) => outlying !== null).map(({ breakId }) => breakId)).toEqual([odd])
    const { outlying, zScore } = curves.at(-1)!
    expect(zScore).toBeGreaterThan(3.5)
    // The bulge of 900 N downwards lasts from 1.5 to 2.1 s after the start of loading; the median stands some 1 % above its ramp.
    expect(outlying!.at).toBeGreaterThanOrEqual(1.5)
    expect(outlying!.at).toBeLessThanOrEqual(2.1)
    expect(outlying!.difference).toBeLessThan(-890)
    expect(outlying!.difference).toBeGreaterThan(-950)
  })

  test('compares a curve only while it is loaded: one that was loaded quickly lies above the others, never below', async () => {
    const ids: number[] = []
    for (const climbMs of [2000, 6000, 6200, 6400, 6600, 7000, 8000])
      ids.push(await keepCurve(archive, { ...plain, climbMs, afterMs: 9000 }))
    const { curves, grid, median, curvesAt } = await compare(ids)
    // By hand: all climb to 4000 N; at 1 s all seven are loaded, at 3 s the six slower ones, at 6.5 s three: too few of seven.
    const [one, three] = [placeOf(grid, 1), placeOf(grid, 3)]
    const load = (place: number, climbS: number) => (4000 * (grid[place]! + 0.001)) / climbS
    expect([curvesAt[one], curvesAt[three]]).toEqual([7, 6])
    expect(median[one]).toBeCloseTo(load(one, 6.4), 6)
    expect(median[three]).toBeCloseTo((load(three, 6.4) + load(three, 6.6)) / 2, 6)
    expect(grid[0]).toBe(0)
    // The fourth slowest is loaded to 6.4 s.
    expect(grid.at(-1)).toBeCloseTo(6.4, 2)
    const { outlying, distance } = curves[0]!
    expect(outlying!.at).toBeCloseTo(2, 2)
    expect(outlying!.difference).toBeCloseTo(4000 - (4000 * 2) / 6.4, -1)
    // Its distance is over its own two seconds: a straight line from 0 to that difference, whose root mean square is / √3.
    expect(distance).toBeCloseTo(outlying!.difference / Math.sqrt(3), -1)
    expect(curves.slice(1).every((curve) => curve.outlying === null)).toBe(true)
  })

  test('aligned at the break, a curve counts from its onset to its break', async () => {
    const ids: number[] = []
    for (const climbMs of [2000, 6000, 6200, 6400, 6600])
      ids.push(await keepCurve(archive, { ...plain, climbMs, restMs: 9000, afterMs: 3000 }))
    const { grid, median, curvesAt } = await compare(ids, { alignAt: 'break' })
    expect(grid.at(-1)).toBe(0)
    expect(median.at(-1)).toBeCloseTo(4000, 6)
    // At -3 s the quick one is at rest still and does not pull the median down.
    expect(curvesAt[placeOf(grid, -3)]).toBe(4)
    expect(Math.min(...median)).toBeGreaterThan(0)
  })

  test('a curve that is set aside is drawn, but counts for nothing', async () => {
    const ids = await keepSeries(5)
    const before = await compare(ids)
    const wild = await keepCurve(archive, { ...plain, peakCounts: 900_000 })
    await archive.addDecision({
      breakId: wild,
      kind: 'set-aside',
      specimenId: null,
      by: 'bench',
      reason: 'specimen slipped',
      recordedAt: morning,
    })
    const { curves, median, lower, upper, curvesAt, grid } = await compare([wild, ...ids])
    expect({ grid, median, lower, upper, curvesAt }).toEqual({
      grid: before.grid,
      median: before.median,
      lower: before.lower,
      upper: before.upper,
      curvesAt: before.curvesAt,
    })
    expect(curves[0]).toMatchObject({ breakId: wild, setAside: true, zScore: null, outlying: null })
    expect(curves[0]!.distance).toBeGreaterThan(1000)
    expect(curves.slice(1)).toEqual(before.curves)
  })

  test('says that too few curves have no median and no outlying one', async () => {
    const { median, curvesAt, notJudged, curves } = await compare(await keepSeries(2))
    expect(median.every(Number.isNaN)).toBe(true)
    expect(Math.max(...curvesAt)).toBe(2)
    expect(notJudged).toBe('too-few')
    expect(curves.every(({ distance, zScore }) => distance === null && zScore === null)).toBe(true)
  })

  test('says that curves that are all alike have no outlying one', async () => {
    const ids: number[] = []
    for (let i = 0; i < 6; i++) ids.push(await keepCurve(archive, plain))
    const { notJudged, curves } = await compare(ids)
    expect(notJudged).toBe('all-alike')
    expect(curves.every(({ distance, zScore }) => distance === 0 && zScore === null)).toBe(true)
  })

  test('leaves out what cannot be compared, each with its reason, and compares the others', async () => {
    const ids = await keepSeries(3)
    const unloading = await keepCurve(archive, plain, { result: { outcome: 'unloading', breakTimeS: null } })
    const nothing = await keepCurve(archive, plain, {
      result: { outcome: 'none', peakN: null, peakTimeS: null, onsetTimeS: null, breakTimeS: null },
    })
    const bare = await keepCurve(archive, plain, { ownScale: { kind: 'none' } })
    const { sessionId } = await archive.beginSession(session)
    const { breakId: running } = await archive.beginBreak(header(sessionId, null))
    const { curves, leftOut } = await compare([...ids, unloading, nothing, bare, running, 99, ids[0]!], {
      alignAt: 'break',
    })
    expect(curves.map(({ breakId }) => breakId)).toEqual(ids)
    expect(Object.fromEntries(leftOut.map(({ breakId, because }) => [breakId, because]))).toEqual({
      [unloading]: expect.stringMatching(/unloading/),
      [nothing]: expect.stringMatching(/nothing was loaded/),
      [bare]: expect.stringMatching(/no scale/),
      [running]: expect.stringMatching(/still being recorded/),
      99: expect.stringMatching(/not in the archive/),
    })
    expect((await compare([unloading], { alignAt: 'peak' })).curves).toHaveLength(1)
    expect(await compare([nothing])).toMatchObject({ curves: [], grid: new Float64Array(0) })
  })

  test('compares readings without a scale with each other, and leaves newtons out where they are fewer', async () => {
    const bare: number[] = []
    for (const peakCounts of [400_000, 410_000, 420_000])
      bare.push(await keepCurve(archive, { ...plain, peakCounts }, { ownScale: { kind: 'none' } }))
    const scaled = await keepCurve(archive, plain)
    const made = await compare([scaled, ...bare], { alignAt: 'peak' })
    expect(made.unit).toBe('counts')
    expect(made.median[made.grid.indexOf(0)]).toBe(410_000)
    expect(made.leftOut).toEqual([{ breakId: scaled, because: expect.stringMatching(/most others have none/) }])
    const shares = await compare(bare, { alignAt: 'peak', normalising: 'force' })
    expect(shares.unit).toBe('%')
    expect(shares.curves.map(({ forceUnit, peakN }) => [forceUnit, peakN])).toEqual([
      [4000, null],
      [4100, null],
      [4200, null],
    ])
    expect(shares.median[shares.grid.indexOf(0)]).toBeCloseTo(100, 9)
  })

  test('counts the sample nearest to the time of the peak as the peak, as times are rounded', async () => {
    // The peak is at 4.499 s; the samples beside it, a millisecond away, are 100 counts lower and at rest.
    const ids: number[] = []
    for (const peakTimeS of [4.4986, 4.499, 4.4994])
      ids.push(await keepCurve(archive, plain, { ownScale: { kind: 'none' }, result: { peakTimeS } }))
    const { curves, leftOut } = await compare(ids, { normalising: 'force' })
    expect(leftOut).toEqual([])
    expect(curves.map(({ forceUnit }) => forceUnit)).toEqual([4000, 4000, 4000])
  })

  test('stands under the scale of the result in force, and at the peak that a person picked', async () => {
    const [specimenId] = await addBlocks(archive, ['C1-LL-1'])
    const breakId = await keepCurve(archive, plain, { specimenId: specimenId! })
    await archive.addDecision({
      breakId,
      kind: 'peak-picked',
      specimenId: null,
      sample: { timeS: 2.499, reading: 200_000 },
      by: 'bench',
      reason: 'the fixture was touched later',
      recordedAt: morning,
    })
    const { curves } = await compare([breakId], { alignAt: 'peak', normalising: 'force' })
    expect(curves[0]).toMatchObject({ number: 'C1-LL-1', originS: 2.499, peakN: 2000, forceUnit: 20, outcome: 'break' })
  })

  test('takes in a curve that the program saw nothing in, once a person has picked its peak', async () => {
    const nothing = { outcome: 'none', peakN: null, peakTimeS: null, onsetTimeS: null, breakTimeS: null } as const
    const breakId = await keepCurve(archive, plain, { result: nothing })
    expect((await compare([breakId], { alignAt: 'peak' })).curves).toEqual([])
    await archive.addDecision({
      breakId,
      kind: 'peak-picked',
      specimenId: null,
      sample: { timeS: 4.499, reading: 400_000 },
      by: 'bench',
      reason: 'the start threshold was too high',
      recordedAt: morning,
    })
    expect((await compare([breakId], { alignAt: 'peak' })).curves).toMatchObject([{ originS: 4.499, peakN: 4000 }])
    const { leftOut } = await compare([breakId], { alignAt: 'break' })
    expect(leftOut).toEqual([{ breakId, because: expect.stringMatching(/no break/) }])
  })

  test('tells how far it is, curve by curve', async () => {
    const ids = await keepSeries(4)
    const seen: Progress[] = []
    await makeComparison(archive, { breakIds: ids, alignAt: 'onset', normalising: 'no' }, (p) => seen.push(p), going)
    expect(seen).toEqual([0, 1, 2, 3, 4].map((done) => ({ task: 'comparison', done, total: 4 })))
  })

  test('stops at the next curve when it is told to', async () => {
    const ids = await keepSeries(4)
    const controller = new AbortController()
    const seen: number[] = []
    const stopped = makeComparison(
      archive,
      { breakIds: ids, alignAt: 'onset', normalising: 'no' },
      ({ done }) => {
        seen.push(done)
        if (done === 1) controller.abort()
      },
      controller.signal,
    )
    await expect(stopped).rejects.toMatchObject({ name: 'AbortError' })
    expect(seen).toEqual([0, 1])
  })

  test('gives others their turn between two curves', async () => {
    const ids = await keepSeries(4)
    let turns = 0
    let counting = true
    const count = () => {
      turns += 1
      if (counting) setImmediate(count)
    }
    setImmediate(count)
    await compare(ids)
    counting = false
    expect(turns).toBeGreaterThan(ids.length)
  })

  test('leaves out a break whose curve is damaged, and lets any other trouble through', async () => {
    const ids = await keepSeries(4)
    const failing = (trouble: Trouble): Archive => ({
      ...archive,
      readCurve: (breakId) => (breakId === ids[1] ? Promise.reject(trouble) : archive.readCurve(breakId)),
    })
    const request = { breakIds: ids, alignAt: 'onset', normalising: 'no' } as const
    const damaged = failing(new Trouble('archive-damaged', 'The curve of break 2 is damaged.', 'Take a backup.'))
    const made = await makeComparison(damaged, request, () => {}, going)
    expect(made.leftOut).toEqual([{ breakId: ids[1], because: 'The curve of break 2 is damaged.' }])
    expect(made.curves).toHaveLength(3)
    const closed = failing(new Trouble('conflict', 'The archive is closed.', 'Open it again.'))
    await expect(makeComparison(closed, request, () => {}, going)).rejects.toMatchObject({ code: 'conflict' })
  })
})
