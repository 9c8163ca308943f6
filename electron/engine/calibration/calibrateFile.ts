// Held by tests/shells/commands/calibrateCommand.spec.ts.
import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { agreeToInvert, keptSoFar } from '#domain/calibration/calibrationRows.ts'
import { readCalibrationCsv } from '#exchange/csv/calibrationCsv.ts'

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
