import { troubleFrom } from '#contract/errors.ts'
import type { EvaluationResult } from '#contract/records/evaluation.ts'
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
      help: "zero offset in the unit of the file's column, taken off every value (default 0)",
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
  ],
  async run({ io, values, positionals, json }) {
    const nPerCount = numberOption(values, 'scale', { not: 0 }) ?? null
    const tare = numberOption(values, 'tare') ?? 0
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
        const result = await evaluateCurveFile(file, { nPerCount, tare, capacityN, calibration })
        await io.out(json ? jsonLine({ file, ...result }) : describe(file, result))
      } catch (thrown) {
        failed = true
        const { message, hint } = troubleFrom(thrown)
        io.err(`${message} ${hint}\n`)
      }
    }
    return failed ? 1 : 0
  },
}

function describe(file: string, result: EvaluationResult): string {
  const said = (value: number | null, digits: number, unit: string) =>
    value === null ? 'unknown' : `${value.toFixed(digits)} ${unit}`
  const lines = [`${file}: ${outcomeWords[result.outcome]}`]
  if (result.outcome !== 'none')
    lines.push(
      `  peak          ${said(result.peakN, 1, 'N')} at ${said(result.peakTimeS, 4, 's')}`,
      `  loading rate  ${said(result.loadingRateNPerS, 1, 'N/s')}`,
      `  sampling      the true peak can lie up to ${said(result.samplingBoundN, 1, 'N')} (${said(result.samplingBoundPercent, 2, '%')}) higher`,
    )
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
