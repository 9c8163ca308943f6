import { setImmediate } from 'node:timers/promises'
import type { Archive } from '#archive/archive.ts'
import type { ComparedCurve, Comparison, ComparisonRequest } from '#contract/breaks/comparison.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import type { Progress } from '#contract/tasks.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { comparisonGrid } from '#domain/signal/compare/comparisonGrid.ts'
import { type CurveAxes, curveAxes } from '#domain/signal/compare/curveAxes.ts'
import { type CurveDistance, curveDistance } from '#domain/signal/compare/curveDistance.ts'
import { curveOnGrid } from '#domain/signal/compare/curveOnGrid.ts'
import { emptyBand, fillBand, type MedianBand } from '#domain/signal/compare/medianBand.ts'
import { outlyingCurves } from '#domain/signal/compare/outlyingCurves.ts'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'
import { comparisonMembers, type Member, orWhyNot } from './comparisonMembers.ts'

/** A member with its curve on the grid. */
type Laid = { member: Member; axes: CurveAxes; samples: number; onGrid: Float64Array; setAside: boolean }

/** Places of the band that are worked out before others get their turn. */
const placesAtOnce = 500

/**
 * Compares the curves of several breaks. They are read one at a time, and others get their turn between them, so that a
 * capture that runs meanwhile is not kept waiting. Each curve takes part only while its specimen is loaded; one that is set
 * aside is drawn, but takes no part in median, band and scores. Throws what `signal` was aborted with.
 */
export async function makeComparison(
  archive: Archive,
  request: ComparisonRequest,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<Comparison> {
  const { members, leftOut } = await comparisonMembers(archive, request, signal)
  const counting = members.filter(({ record }) => record.summary.setAside === null)
  const grid = comparisonGrid((counting.length > 0 ? counting : members).map(({ extent }) => extent))
  const laid: Laid[] = []
  for (const [done, member] of members.entries()) {
    onProgress({ task: 'comparison', done, total: members.length })
    await setImmediate()
    signal.throwIfAborted()
    const raw = await orWhyNot(archive.readCurve(member.breakId))
    const one = typeof raw === 'string' ? raw : layOnGrid(member, raw, request, grid)
    if (typeof one === 'string') leftOut.push({ breakId: member.breakId, because: one })
    else laid.push(one)
  }
  onProgress({ task: 'comparison', done: members.length, total: members.length })
  const band = await bandOf(laid, grid.length, signal)
  const unit = members[0]?.unit ?? 'N'
  return {
    ...judgedCurves(laid, band, grid),
    leftOut,
    alignAt: request.alignAt,
    unit: request.normalising === 'no' ? unit : '%',
    timeUnit: request.normalising === 'force-and-time' ? '%' : 's',
    grid,
    ...band,
  }
}

function layOnGrid(member: Member, raw: RawCurve, request: ComparisonRequest, grid: Float64Array): Laid | string {
  const { record, marks, unit } = member
  const { scale, tareOffset } = scaleInForce(record)
  const toForce = forceOfReading(scale, record.header.readingUnit)
  const forceAt = (i: number) => (toForce === null ? raw.readings[i]! : toForce(raw.readings[i]!)) - tareOffset
  const stretches = stretchesBetweenGaps(raw.timeS)
  const { alignAt, normalising } = request
  const axes =
    unit === 'N'
      ? member.axes
      : curveAxes({ ...marks, peak: peakIn(raw, marks.peakTimeS, forceAt) }, alignAt, normalising)
  if (typeof axes === 'string') return axes
  const onGrid = curveOnGrid(raw.timeS, forceAt, stretches, axes, member.loaded, grid)
  return { member, axes, samples: raw.timeS.length, onGrid, setAside: record.summary.setAside !== null }
}

/** The reading, after tare, of the sample that the result names as the peak. */
function peakIn({ timeS }: RawCurve, peakTimeS: number | null, forceAt: (i: number) => number): number | null {
  if (peakTimeS === null || timeS.length === 0) return null
  const after = timeS.findIndex((time) => time >= peakTimeS)
  if (after < 0) return forceAt(timeS.length - 1)
  const before = Math.max(0, after - 1)
  return forceAt(timeS[after]! - peakTimeS < peakTimeS - timeS[before]! ? after : before)
}

async function bandOf(laid: readonly Laid[], places: number, signal: AbortSignal): Promise<MedianBand> {
  const curves = laid.filter(({ setAside }) => !setAside).map(({ onGrid }) => onGrid)
  const band = emptyBand(places)
  for (let from = 0; from < places; from += placesAtOnce) {
    await setImmediate()
    signal.throwIfAborted()
    fillBand(band, curves, from, Math.min(places, from + placesAtOnce))
  }
  return band
}

function judgedCurves(
  laid: readonly Laid[],
  band: MedianBand,
  grid: Float64Array,
): Pick<Comparison, 'curves' | 'notJudged'> {
  const distances = new Map<Laid, CurveDistance>()
  for (const one of laid) {
    const distance = curveDistance(one.onGrid, band.median, grid)
    if (distance !== null) distances.set(one, distance)
  }
  const judged = laid.filter((one) => !one.setAside && distances.has(one))
  const { scores, outlying, notJudged } = outlyingCurves(judged.map((one) => distances.get(one)!.rootMeanSquare))
  const curves = laid.map((one): ComparedCurve => {
    const { summary } = one.member.record
    const distance = distances.get(one)
    const place = judged.indexOf(one)
    return {
      breakId: summary.breakId,
      number: summary.number,
      outcome: summary.outcome,
      setAside: one.setAside,
      peakN: summary.peakN,
      ...one.axes,
      samples: one.samples,
      distance: distance?.rootMeanSquare ?? null,
      zScore: scores?.[place] ?? null,
      outlying: outlying?.[place] === true ? distance!.farthest : null,
    }
  })
  return { curves, notJudged }
}
