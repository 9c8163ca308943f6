// Held by tests/engine/breaks/comparison.spec.ts.
import type { Archive } from '#archive/archive.ts'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Comparison, ComparisonRequest } from '#contract/breaks/comparison.ts'
import { Trouble } from '#contract/errors.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import type { Extent } from '#domain/signal/compare/comparisonGrid.ts'
import { type CurveAxes, type CurveMarks, curveAxes } from '#domain/signal/compare/curveAxes.ts'
import { type LoadedPart, loadedPart } from '#domain/signal/compare/loadedPart.ts'
import { resultInForce, scaleInForce } from '#domain/strength/resultInForce.ts'

type LeftOut = Comparison['leftOut'][number]

/** A break that can be compared, before its curve is read. */
export type Member = {
  breakId: number
  record: BreakRecord
  unit: 'N' | 'counts'
  marks: CurveMarks
  axes: CurveAxes
  loaded: LoadedPart
  /** Where its loaded part lies on the common axes. */
  extent: Extent
}

/** Reads what is known of the breaks and sorts out those that cannot be compared. */
export async function comparisonMembers(
  archive: Archive,
  { breakIds, alignAt, normalising }: ComparisonRequest,
  signal: AbortSignal,
): Promise<{ members: Member[]; leftOut: LeftOut[] }> {
  const members: Member[] = []
  const leftOut: LeftOut[] = []
  for (const breakId of new Set(breakIds)) {
    signal.throwIfAborted()
    const record = await orWhyNot(archive.break(breakId))
    const member = typeof record === 'string' ? record : memberOf(record, alignAt, normalising)
    if (typeof member === 'string') leftOut.push({ breakId, because: member })
    else members.push(member)
  }
  return oneUnit(members, leftOut)
}

function memberOf(
  record: BreakRecord,
  alignAt: ComparisonRequest['alignAt'],
  normalising: ComparisonRequest['normalising'],
): Member | string {
  const { summary, header, end } = record
  if (end === null) return 'it is still being recorded'
  const result = resultInForce(record)?.result
  if (result === undefined) return 'it has no result yet'
  const unit = forceOfReading(scaleInForce(record).scale, header.readingUnit) === null ? 'counts' : 'N'
  const marks: CurveMarks = {
    // A peak that a person picked makes a break of what the program saw none in.
    outcome: summary.outcome ?? result.outcome,
    onsetTimeS: result.onsetTimeS,
    peakTimeS: summary.overruled?.timeS ?? result.peakTimeS,
    breakTimeS: result.breakTimeS,
    // Readings without a scale have no peak in the record; it is read from the curve when that is there.
    peak: unit === 'counts' ? 1 : summary.peakN,
  }
  const axes = curveAxes(marks, alignAt, normalising)
  if (typeof axes === 'string') return axes
  const loaded = loadedPart(marks)
  if (loaded === null) return 'it has neither a peak nor a break, so nothing tells until when it was loaded'
  const on = (timeS: number) => (timeS - axes.originS) / axes.timeUnit
  const extent = { from: on(loaded.fromS), to: on(loaded.toS) }
  return { breakId: summary.breakId, record, unit, marks, axes, loaded, extent }
}

/** Forces and bare readings have no axis in common: the fewer of the two are left out. */
function oneUnit(members: Member[], leftOut: LeftOut[]): { members: Member[]; leftOut: LeftOut[] } {
  const bare = members.filter(({ unit }) => unit === 'counts').length
  const keptUnit = 2 * bare > members.length ? 'counts' : 'N'
  const because =
    keptUnit === 'N'
      ? 'its readings have no scale, and those of the others have one'
      : 'its readings have a scale, and those of most others have none'
  const others = members.filter(({ unit }) => unit !== keptUnit)
  return {
    members: members.filter(({ unit }) => unit === keptUnit),
    leftOut: [...leftOut, ...others.map(({ breakId }) => ({ breakId, because }))],
  }
}

/** What was asked for, or why this one break cannot be had; any other trouble is not about one break and is thrown. */
export async function orWhyNot<T>(asked: Promise<T>): Promise<T | string> {
  try {
    return await asked
  } catch (thrown) {
    if (thrown instanceof Trouble && thrown.code === 'not-found') return 'it is not in the archive'
    if (thrown instanceof Trouble && thrown.code === 'archive-damaged') return thrown.message
    throw thrown
  }
}
