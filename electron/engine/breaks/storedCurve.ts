// Held by tests/engine/breaks/handlers.spec.ts.
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { taredForce } from '#domain/calibration/scale/forceScale.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'
import { type CurveRows, curveCsvText } from '#exchange/csv/curveCsv.ts'
import { readArchive } from '../core/readArchive.ts'

/** A stored curve as it leaves the program: its record, its rows, and the same as CSV text in pieces, after comments. */
export type StoredCurve = { record: BreakRecord; rows: CurveRows; csv(comments: readonly string[]): Generator<string> }

/** The raw curve of a break. Rejects with Trouble `not-found`. */
export function storedCurve(path: string, program: string, breakId: number): Promise<StoredCurve> {
  return readArchive(path, program, async (archive) => {
    const record = await archive.break(breakId)
    const rows = curveRows(record, await archive.readCurve(breakId))
    return { record, rows, csv: (comments) => curveCsvText(rows, comments) }
  })
}

/** No cell knows more, and the digits beyond are those of binary fractions. */
const wholeMicronewtons = (forceN: number) => Math.round(forceN * 1e6) / 1e6

function curveRows(record: BreakRecord, { timeS, readings }: RawCurve): CurveRows {
  const { scale, tareOffset } = scaleInForce(record)
  const { readingUnit } = record.header
  const forceN = scale.kind === 'none' ? null : taredForce(readings, scale, readingUnit, tareOffset).force
  return { timeS, counts: readingUnit === 'counts' ? readings : null, forceN: forceN?.map(wholeMicronewtons) ?? null }
}
