import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import { taredForce } from '#domain/calibration/scale/forceScale.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'
import { type CurveRows, curveCsvText } from '#exchange/csv/curveCsv.ts'
import { readArchive } from '../core/readArchive.ts'

/** A stored curve as it leaves the program: rows, and the same as CSV text in pieces. */
export type StoredCurve = { rows: CurveRows; csv(withComments: boolean): Generator<string> }

/** The raw curve of a break. Rejects with Trouble `not-found`. */
export function storedCurve(path: string, program: string, breakId: number): Promise<StoredCurve> {
  return readArchive(path, program, async (archive) => {
    const record = await archive.break(breakId)
    const rows = curveRows(record, await archive.readCurve(breakId))
    return { rows, csv: (withComments) => curveCsvText(rows, withComments ? curveComments(record) : []) }
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

const overruledWords = { 'peak-picked': 'peak picked by hand', 'premature-failure': 'premature failure declared' }

function overruledComment({ overruled, peakN }: BreakSummary): string[] {
  if (overruled === null) return []
  const { kind, timeS, by, reason } = overruled
  const load = peakN === null ? '' : `, ${wholeMicronewtons(peakN)} N`
  const why = reason.replaceAll(/\s+/g, ' ')
  return [`${overruledWords[kind]} at ${timeS} s${load}, by ${by}: ${why}`]
}

/** Where a curve comes from, so that the file can be understood without the archive. */
function curveComments(record: BreakRecord): string[] {
  const { summary, header, session, end } = record
  const { tare } = header
  const { scale, tareOffset } = scaleInForce(record)
  const scaleWords = {
    none: 'none',
    'uncalibrated-scale': `${scale.kind === 'uncalibrated-scale' ? scale.nPerCount : ''} N per count, uncalibrated`,
    'device-unit': `the device's own (${header.readingUnit}), uncalibrated`,
    calibration: `calibration ${scale.kind === 'calibration' ? scale.calibrationId : ''}`,
  }[scale.kind]
  return [
    `break ${header.breakId}, specimen ${summary.number ?? 'unknown'}, started ${header.startedAt}`,
    `source ${session.source}, line format ${session.lineFormat}`,
    `scale: ${scaleWords}`,
    `tare: ${tare === null ? 'none' : `${tareOffset} ${scale.kind === 'none' ? 'counts' : 'N'}, taken ${tare.takenAt}`}`,
    `ending: ${end?.ending ?? 'still running'}`,
    ...overruledComment(summary),
    ...(summary.demo ? ['invented data of the demo study'] : []),
  ]
}
