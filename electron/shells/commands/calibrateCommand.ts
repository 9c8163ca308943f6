import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import { noteSentences } from '#words/calibration/noteWords.ts'
import { ownCalibration } from '#words/calibration/ownCalibration.ts'
import { proposalWords } from '#words/calibration/proposalWords.ts'
import { chainFindingWords } from '#words/keeping/verifyWords.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { nameOption, wordOption } from './optionValues.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const calibrateCommand: Command = {
  name: 'calibrate',
  operands: 'FILE',
  summary: 'Fits a calibration to a file of known forces and readings, and says what it is worth.',
  options: {
    degree: { type: 'string', value: '1..3', help: 'degree of the curve; without it the one that the data ask for' },
    'through-zero': { type: 'boolean', help: 'the curve gives no force at a reading of 0' },
    inverted: { type: 'boolean', help: 'the reading may fall while the force rises (cell wired in reverse)' },
    save: { type: 'boolean', help: 'keeps the calibration in the archive (needs --name); it is not yet in force' },
    name: { type: 'string', value: 'TEXT', help: 'what the calibration is called' },
  },
  usesArchive: true,
  details: [
    'Calibration CSV: a header line with run,direction,force_N,reading; run 1, 2, ...; direction up or down; the force',
    'applied in newtons; the mean reading; lines that start with # are comments.',
    'Force = b0 + b1 reading + b2 reading^2 + ..., least squares over all lines.',
    'q, b, v, f0, a: accuracy, repeatability, reversibility, zero error, resolution, in percent, as in ISO 7500-1.',
    'A calibration with shop weights is no traceable certificate.',
    '',
    'With --json: one object {degree, coefficients, coefficientSE, residualSD, rSquared, readings, verifiedRangeN,',
    'steps: [{forceN, q, b, v, f0, a, class}], class, expandedUncertaintyPercent}, and calibrationId with --save.',
  ],
  async run({ io, values, positionals, json }) {
    const [file] = positionals
    const degree = wordOption(values, 'degree', ['1', '2', '3'])
    const name = nameOption(values, 'name')
    if (values.save === true && name === undefined)
      throw new UsageError('--save needs --name TEXT: say what the calibration is called.')
    if (values.save !== true && name !== undefined) throw new UsageError('--name belongs to --save only.')
    const { calibrateFile } = await import('#engine/calibration/calibrateFile.ts')
    const { keepFileCalibration } = await import('#engine/keepFileCalibration.ts')
    const found = await calibrateFile(file!, {
      degree: degree === undefined ? null : (Number(degree) as 1 | 2 | 3),
      throughZero: values['through-zero'] === true,
      invertedAccepted: values.inverted === true,
    })
    const stored =
      name === undefined ? null : await keepFileCalibration(archiveOf(values), programName, headsFile(), found, name)
    if (stored !== null && stored.finding !== null) io.err(`${chainFindingWords(stored.finding)}\n`)
    const kept = stored?.calibrationId ?? null
    const { result } = found.assessment
    if (json) {
      await io.out(jsonLine(kept === null ? result : { ...result, calibrationId: kept }))
      for (const note of noteSentences(found.assessment)) io.err(`${note}\n`)
    } else await io.out(describe(file!, found.assessment, kept))
    return 0
  },
}

const newtons = (value: number) => `${Number(value.toPrecision(6))} N`
const percent = (value: number | null) => (value === null ? '-' : value.toFixed(3)).padStart(9)

function describe(file: string, assessment: CalibrationAssessment, kept: number | null): string {
  const { result, proposal } = assessment
  const { degree, coefficients, coefficientSE, residualSD, verifiedRangeN, steps, expandedUncertaintyPercent } = result
  const lines = [
    `${file}: degree ${degree}, ${result.readings} readings`,
    ...coefficients.map((value, power) => {
      const error = coefficientSE[power]
      return `  b${power}            ${value.toPrecision(12)}${error == null ? '' : `, standard error ${error.toPrecision(3)}`}`
    }),
    `  residual SD   ${residualSD === null ? 'unknown' : newtons(residualSD)}`,
    `  proposed      ${proposalWords(proposal)}`,
    `  verified      ${verifiedRangeN === null ? 'no range' : `${newtons(verifiedRangeN[0])} to ${newtons(verifiedRangeN[1])}`}`,
    `  class         ${result.class}`,
    `  uncertainty   ${expandedUncertaintyPercent === null ? 'unknown' : `${expandedUncertaintyPercent.toFixed(3)} % at most (k = 2)`}`,
    '',
    '         force         q         b         v        f0         a  class',
    ...steps.map(
      ({ forceN, q, b, v, f0, a, class: reached }) =>
        `${newtons(forceN).padStart(14)} ${[q, b, v, f0, a].map(percent).join(' ')}  ${reached}`,
    ),
    '',
    ...noteSentences(assessment),
    ...(kept === null ? [] : [`Kept as calibration ${kept}. Put it in force in the program, or name it to "capture".`]),
    ownCalibration,
  ]
  return `${lines.join('\n')}\n`
}
