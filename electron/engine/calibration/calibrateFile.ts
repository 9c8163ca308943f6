// Held by tests/shells/commands/calibrateCommand.spec.ts.
import { basename } from 'node:path'
import { systemClock } from '#acquisition/clock.ts'
import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { agreeToInvert, keptSoFar } from '#domain/calibration/calibrationRows.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { zeroReturns } from '#domain/calibration/steps/creep.ts'
import { readCalibrationCsv } from '#exchange/csv/calibrationCsv.ts'
import { openOwnArchive } from '../core/realParts.ts'

export type CalibrateFileOptions = {
  /** null: the degree that is proposed. */
  degree: 1 | 2 | 3 | null
  throughZero: boolean
  /** The reading may fall while the force rises. */
  invertedAccepted: boolean
}

/** A calibration found from a file: its rows, and all that can be said of them. */
export type FileCalibration = { file: string; rows: CalibrationRow[]; assessment: CalibrationAssessment }

/** Fits a calibration CSV over all its rows. Rejects with a Trouble that names the file, and the line where there is one. */
export async function calibrateFile(file: string, options: CalibrateFileOptions): Promise<FileCalibration> {
  const { rows, lines } = await readCalibrationCsv(file)
  try {
    return { file, rows, assessment: calibrationOf(rows, { ...options, fitOver: 'all' }) }
  } catch (thrown) {
    if (!(thrown instanceof Trouble)) throw thrown
    throw new Trouble(thrown.code, namedInFile(file, lines, thrown.message), hintForFile(thrown.hint))
  }
}

/** "Row 3 (run 1, ...): ..." is "FILE, line 5 (run 1, ...): ...": the person sees lines, not rows. */
function namedInFile(file: string, lines: readonly number[], message: string): string {
  const row = /^Row (\d+)/.exec(message)
  if (row === null) return `${file}: ${message}`
  return `${file}, line ${lines[Number(row[1]) - 1]}${message.slice(row[0].length)}`
}

/** A hint for a file and its command, where the routine would speak of the readings on the bench. */
function hintForFile(hint: string): string {
  return hint.replace(keptSoFar, '').replace(agreeToInvert, 'Add --inverted if that is always so').trim()
}

/** Keeps a calibration from a file in an archive; returns its number. It is not in force until somebody puts it in force. */
export async function keepFileCalibration(
  archivePath: string,
  program: string,
  { file, rows, assessment }: FileCalibration,
  name: string,
): Promise<number> {
  const archive = await openOwnArchive(archivePath, program)
  try {
    const stored = await archive.addCalibration(
      {
        name,
        madeAt: systemClock.instant(),
        by: '',
        supersedes: null,
        dueOn: null,
        source: `file ${basename(file)}`,
        device: 'serial',
        readingUnit: 'counts',
        circumstances: null,
        weights: [],
        readings: [],
        rows,
        creep: zeroReturns(rows, (reading) => polynomialAt(assessment.result.coefficients, reading)),
        assessment,
        note: '',
      },
      null,
    )
    return stored.calibrationId
  } finally {
    await archive.close()
  }
}
