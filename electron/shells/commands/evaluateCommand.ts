import { troubleFrom } from '#contract/errors.ts'
import type { EvaluatedFile, ZeroOfFile } from '#engine/evaluateCurveFile.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption } from './optionValues.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const evaluateCommand: Command = {
  name: 'evaluate',
  operands: 'FILE...',
  summary: 'Evaluates load-curve CSV files without an archive: outcome, peak, rate, sampling bound and events.',
  options: {
    scale: { type: 'string', value: 'N_PER_COUNT', help: 'newtons per count; needed for curves in counts' },
    calibration: {
      type: 'string',
      value: 'ID',
      help: 'a calibration of the archive, for curves in counts; peaks outside its range are flagged',
    },
    tare: {
      type: 'string',
      value: 'VALUE',
      help: "zero offset in the unit of the file's column, taken off every value (default: see below)",
    },
    capacity: {
      type: 'string',
      value: 'N',
      help: 'rated load of the cell, N; above it the peak is flagged over-capacity',
    },
  },
  usesArchive: true,
  details: [
    'Curve CSV: RFC 4180, UTF-8, a header line with time_s and one of force_N, force_lbf, counts; lines that start',
    'with # are comments; times rise. One result per file, in order; a file that cannot be evaluated is named on',
    'stderr, the others are evaluated all the same, and the exit code is 1.',
    '',
    'Zero: force is taken as it stands. Counts have a zero of their own: without --tare it is the mean over the last steady',
    'second or so before the load (less, where the curve begins less than that before it). Where nothing is steady before',
    'the load nothing is taken off, and stderr says so.',
    'A file with force and counts, such as "breakledger curve" prints, is taken in force, unless --calibration is given.',
  ],
  async run({ io, values, positionals, json }) {
    const nPerCount = numberOption(values, 'scale', { not: 0 }) ?? null
    const tare = numberOption(values, 'tare') ?? null
    const capacityN = numberOption(values, 'capacity', { above: 0 }) ?? null
    const calibrationId = numberOption(values, 'calibration', { from: 1, whole: true })
    if (calibrationId !== undefined && nPerCount !== null)
      throw new UsageError('--calibration and --scale exclude each other: a calibration has its own scale.')
    const { calibrationOfArchive, evaluateCurveFile } = await import('#engine/evaluateCurveFile.ts')
    const calibration =
      calibrationId === undefined ? null : await calibrationOfArchive(archiveOf(values), programName, calibrationId)
    let failed = false
    for (const file of positionals) {
      try {
        const evaluated = await evaluateCurveFile(file, { nPerCount, tare, capacityN, calibration })
        const { result, zero, column } = evaluated
        if (nPerCount !== null && column !== 'counts')
          io.err(`${file}: evaluated from its column ${column}; --scale is for curves in counts.\n`)
        if (zero?.kind === 'unknown' && result.outcome !== 'none') io.err(`${file}: ${zeroUnknown}\n`)
        if (json && zero?.kind === 'rest') io.err(`${file}: zero ${zeroWords(zero)}\n`)
        await io.out(json ? jsonLine({ file, ...result }) : describe(file, evaluated))
      } catch (thrown) {
        failed = true
        const { message, hint } = troubleFrom(thrown)
        io.err(`${message} ${hint}\n`)
      }
    }
    return failed ? 1 : 0
  },
}

const zeroUnknown =
  'nothing is steady before the load, so no zero was taken off: every force may be off by the zero of the cell. ' +
  'Give the counts of the empty bench with --tare VALUE.'

const zeroWords = ({ offsetN, readings }: Extract<ZeroOfFile, { kind: 'rest' }>) =>
  `${offsetN.toFixed(2)} N taken off, the mean of ${readings} steady readings before the load`

function describe(file: string, { result, zero }: EvaluatedFile): string {
  const said = (value: number | null, digits: number, unit: string) =>
    value === null ? 'unknown' : `${value.toFixed(digits)} ${unit}`
  const lines = [`${file}: ${outcomeWords[result.outcome]}`]
  if (result.outcome !== 'none')
    lines.push(
      `  peak          ${said(result.peakN, 1, 'N')} at ${said(result.peakTimeS, 4, 's')}`,
      `  loading rate  ${said(result.loadingRateNPerS, 1, 'N/s')}`,
      `  sampling      the true peak can lie up to ${said(result.samplingBoundN, 1, 'N')} (${said(result.samplingBoundPercent, 2, '%')}) higher`,
    )
  if (zero?.kind === 'rest') lines.push(`  zero          ${zeroWords(zero)}`)
  lines.push(
    `  samples       ${result.samples} at ${said(result.sampleRateHz, 2, 'Hz')}, ${result.missingSamples} missing`,
  )
  if (result.flags.length > 0) lines.push(`  flags         ${result.flags.join(', ')}`)
  for (const { kind, startTimeS, endTimeS, dropPercent } of result.events)
    lines.push(
      `  ${kind.padEnd(13)} ${startTimeS.toFixed(4)} to ${endTimeS.toFixed(4)} s` +
        (dropPercent === null ? '' : `, drop ${dropPercent.toFixed(1)} %`),
    )
  return `${lines.join('\n')}\n`
}

const outcomeWords = { break: 'broke', unloading: 'let go without a break', none: 'nothing was loaded' } as const
