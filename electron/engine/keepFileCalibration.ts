// Held by tests/shells/commands/calibrateCommand.spec.ts.
import { basename } from 'node:path'
import { systemClock } from '#acquisition/clock.ts'
import type { HeadFinding } from '#contract/keeping/archive.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { zeroReturns } from '#domain/calibration/steps/creep.ts'
import type { FileCalibration } from './calibration/calibrateFile.ts'
import { openOwnArchive } from './core/realParts.ts'
import { watchChain } from './keeping/watchChain.ts'

/**
 * Keeps a calibration from a file in an archive, and the head of its chain in `keptHeads`. It is not in force until somebody puts
 * it in force. `finding`: what is wrong with the chain, held against the head that was kept before.
 */
export async function keepFileCalibration(
  archivePath: string,
  program: string,
  keptHeads: string,
  { file, rows, assessment }: FileCalibration,
  name: string,
): Promise<{ calibrationId: number; finding: HeadFinding | null }> {
  const archive = await openOwnArchive(archivePath, program)
  try {
    const watch = await watchChain(archive, keptHeads)
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
    await watch.close()
    return { calibrationId: stored.calibrationId, finding: watch.finding }
  } finally {
    await archive.close()
  }
}
