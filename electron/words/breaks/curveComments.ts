import type { BreakRecord, BreakSummary } from '#contract/breaks/break.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { scaleInForce } from '#domain/strength/resultInForce.ts'
import { isSimulated, simulatedMark } from '../keeping/demoWords.ts'
import { resultsWords } from '../specimens/resultsWords.ts'
import { overruledWords } from './decisionWords.ts'

/**
 * Where a curve comes from, line by line, so that a file of it can be understood without the archive. Figures stand as they are
 * stored, in SI units.
 */
export function curveComments(record: BreakRecord): string[] {
  const { summary, header, session, end } = record
  const { tare } = header
  const { scale, tareOffset } = scaleInForce(record)
  const unit = scale.kind === 'none' ? 'counts' : 'N'
  return [
    `break ${header.breakId}, specimen ${summary.number ?? 'unknown'}, started ${header.startedAt}`,
    `source ${session.source}, line format ${session.lineFormat}`,
    `scale: ${exactScaleWords(scale, header.readingUnit)}`,
    `tare: ${tare === null ? 'none' : `${tareOffset} ${unit}, taken ${tare.takenAt}`}`,
    `ending: ${end?.ending ?? 'still running'}`,
    ...overruledComment(summary),
    ...[resultsWords(summary.resultsOfSpecimen)].filter((words) => words !== null),
    ...(isSimulated(summary) ? [`${simulatedMark}: every number is invented`] : []),
  ]
}

/** The scale with every digit, so that the forces of the file can be found again from its counts. */
function exactScaleWords(scale: ForceScale, readingUnit: string): string {
  switch (scale.kind) {
    case 'none':
      return 'none'
    case 'uncalibrated-scale':
      return `${scale.nPerCount} N per count, uncalibrated`
    case 'device-unit':
      return `the device's own (${readingUnit}), uncalibrated`
    case 'calibration':
      return `calibration ${scale.calibrationId}`
  }
}

function overruledComment({ overruled, peakN }: BreakSummary): string[] {
  if (overruled === null) return []
  // No cell knows more than micronewtons.
  const load = peakN === null ? '' : `, ${Math.round(peakN * 1e6) / 1e6} N`
  const reason = overruled.reason.replaceAll(/\s+/g, ' ')
  return [overruledWords({ ...overruled, reason }, `${overruled.timeS} s${load}`)]
}
