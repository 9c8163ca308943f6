import type { ComparedCurve, Comparison, ComparisonRequest } from '#contract/breaks/comparison.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { Trouble } from '#contract/errors.ts'
import { between } from '#domain/numbers/between.ts'
import { scriptedCurve } from './scriptedCurve.ts'
import type { ScriptedHost } from './scriptedHost.ts'
import { scriptedGroup } from './scriptedReview.ts'

const quietS = 2
const rateHz = 200
const gridPoints = 400

export type ScriptedComparison = {
  /** Break whose curve is much weaker from half way on. */
  outlyingId?: number
  /** Breaks that cannot be compared. */
  withoutOnset?: readonly number[]
  /** Never answers until it is stopped. */
  endless?: boolean
}

/** Gives a scripted host curves that differ from each other, and answers about comparing them. No model of anything. */
export function scriptComparison(host: ScriptedHost, script: ScriptedComparison = {}): ScriptedHost {
  const { withoutOnset = [], outlyingId = null } = script
  let stop: (() => void) | null = null

  const riseOf = (breakId: number) => 5.5 + ((breakId * 1.37) % 3.5)
  function curveOf(breakId: number): RawCurve {
    const summary = host.breaks.find(({ summary }) => summary.breakId === breakId)?.summary
    const curve = scriptedCurve(summary?.peakN ?? 4000, riseOf(breakId), rateHz, breakId)
    if (breakId === outlyingId)
      curve.readings = curve.readings.map((force, i) => force * (1 - Math.min(i / rateHz / 12, 0.45)))
    return curve
  }
  function comparedOf(breakId: number, { alignAt, normalising }: ComparisonRequest): ComparedCurve {
    const record = host.breaks.find(({ summary }) => summary.breakId === breakId)
    const { timeS, readings } = curveOf(breakId)
    const peakN = Math.max(...readings)
    return {
      breakId,
      number: record?.summary.number ?? null,
      outcome: record?.summary.outcome ?? null,
      setAside: record !== undefined && record.summary.setAside !== null,
      peakN,
      originS: alignAt === 'onset' ? quietS : quietS + riseOf(breakId),
      timeUnit: normalising === 'force-and-time' ? riseOf(breakId) / 100 : 1,
      forceUnit: normalising === 'no' ? 1 : peakN / 100,
      samples: timeS.length,
      distance: null,
      zScore: null,
      outlying: null,
    }
  }

  function compare(request: ComparisonRequest): Comparison {
    const curves = request.breakIds
      .filter((id) => !withoutOnset.includes(id))
      .map((breakId) => comparedOf(breakId, request))
    const raw = curves.map(({ breakId }) => curveOf(breakId))
    const counted = curves.map(({ setAside }) => !setAside)
    const spans = curves.map(({ breakId, originS, timeUnit }) => ({
      from: (quietS - originS) / timeUnit,
      to: (quietS + riseOf(breakId) - originS) / timeUnit,
    }))
    const from = Math.min(...spans.map((span) => span.from))
    const to = Math.max(...spans.map((span) => span.to))
    const grid = Float64Array.from({ length: gridPoints }, (_, i) => from + ((to - from) * i) / (gridPoints - 1))
    const [median, lower, upper, curvesAt] = [0, 1, 2, 3].map(() => new Float64Array(gridPoints).fill(Number.NaN))
    for (const [i, at] of grid.entries()) {
      const values = curves
        .map(({ originS, timeUnit, forceUnit }, c) => {
          const loaded = at >= spans[c]!.from && at <= spans[c]!.to
          const value = loaded ? between(raw[c]!.timeS, raw[c]!.readings, at * timeUnit + originS) : null
          return value === null || !counted[c] ? null : value / forceUnit
        })
        .filter((value) => value !== null)
        .sort((a, b) => a - b)
      curvesAt![i] = values.length
      if (values.length < Math.max(3, counted.length / 2)) continue
      const quantile = (share: number) => values[Math.round(share * (values.length - 1))]!
      median![i] = quantile(0.5)
      lower![i] = quantile(0.25)
      upper![i] = quantile(0.75)
    }
    const unit = request.normalising === 'no' ? 'N' : '%'
    const timeUnit = request.normalising === 'force-and-time' ? '%' : 's'
    if (curves.length >= 3)
      for (const [c, curve] of curves.entries()) {
        const usual = unit === 'N' ? 80 + 20 * (c % 5) : 2 + (c % 5) / 2
        curve.distance = curve.breakId === outlyingId ? 9 * usual : usual
        curve.zScore = curve.breakId === outlyingId ? 5.2 : ((c * 0.7) % 2.6) - 0.9
        const at = timeUnit === '%' ? 62 : request.alignAt === 'onset' ? 4.2 : -2.1
        const there = between(raw[c]!.timeS, raw[c]!.readings, at * curve.timeUnit + curve.originS)
        const middle = between(grid, median!, at)
        if (curve.breakId === outlyingId && there !== null && middle !== null)
          curve.outlying = { at, difference: there / curve.forceUnit - middle }
      }
    return {
      curves,
      leftOut: request.breakIds
        .filter((id) => withoutOnset.includes(id))
        .map((breakId) => ({ breakId, because: 'no load was found on it, so there is no onset to lay it at' })),
      notJudged: curves.length < 5 ? 'too-few' : null,
      alignAt: request.alignAt,
      unit,
      timeUnit,
      grid,
      median: median!,
      lower: lower!,
      upper: upper!,
      curvesAt: curvesAt!,
    }
  }

  Object.assign(host.handlers, {
    'breaks.curve': async ({ breakId, fromS, toS }: { breakId: number; fromS: number | null; toS: number | null }) => {
      const { timeS, readings } = curveOf(breakId)
      const from = fromS === null ? 0 : Math.max(timeS.findIndex((time) => time >= fromS) - 1, 0)
      const to = toS === null ? timeS.length : timeS.findLastIndex((time) => time <= toS) + 2
      return { timeS: timeS.slice(from, to), force: readings.slice(from, to), unit: 'N', samples: timeS.length }
    },
    'breaks.group': async ({ breakId }: { breakId: number }) => {
      const adhesive = host.breaks.find(({ summary }) => summary.breakId === breakId)?.summary.adhesive ?? null
      const inGroup = host.breaks.filter(({ summary }) => summary.adhesive === adhesive)
      return {
        common: adhesive === null ? null : scriptedGroup(adhesive),
        breakIds: inGroup.map(({ summary }) => summary.breakId),
      }
    },
    'breaks.ids': async () => host.breaks.map(({ summary }) => summary.breakId).reverse(),
    'comparison.make': async (request: ComparisonRequest) => {
      if (script.endless) {
        host.emit('task.progress', { task: 'comparison', done: 3, total: request.breakIds.length })
        await new Promise<void>((resolve) => {
          stop = resolve
        })
        throw new Trouble('cancelled', 'The comparison was stopped.', '')
      }
      return compare(request)
    },
    'task.cancel': async () => {
      stop?.()
      return stop !== null
    },
  })
  return host
}
