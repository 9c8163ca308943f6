import { troubleFrom } from '#contract/errors.ts'
import { zeroFoundWords, zeroUnknownWords } from '#words/breaks/zeroWords.ts'
import { plainText } from '#words/units/plainText.ts'
import type { Command } from './command.ts'
import { evaluationText } from './evaluationText.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption, refuseTwoScales } from './optionValues.ts'
import { archiveOf } from './ownArchive.ts'
import { programName } from './programName.ts'

export const evaluateCommand: Command = {
  name: 'evaluate',
  operands: 'FILE...',
  summary: 'Evaluates load-curve CSV files without an archive: outcome, peak, rate, sampling bound, course and events.',
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
    'press-speed': {
      type: 'string',
      value: 'MM_PER_S',
      help: 'constant speed of the press, mm/s, for the work to failure',
    },
  },
  usesArchive: true,
  details: [
    'Curve CSV: RFC 4180, UTF-8, a header line with time_s and one of force_N, force_lbf, counts; lines that start',
    'with # are comments; times rise. One result per file, in order; a file that cannot be evaluated is named on',
    'stderr, the others are evaluated all the same, and the exit code is 1.',
    '',
    'Work to failure, J: the area under load and displacement where the file has a column displacement_mm, measured',
    'along; else that under load and time, by --press-speed. Without either it is null.',
    '',
    'Zero: force is taken as it stands. Counts have a zero of their own: without --tare it is the mean over the last steady',
    'second or so before the load (less, where the curve begins less than that before it). Where nothing is steady before',
    'the load nothing is taken off, and stderr says so.',
    'A file with force and counts, such as "breakledger curve" prints, is taken in force, unless --calibration is given.',
    '',
    'With --json: one object per file, {file, outcome, peakN, peakTimeS, onsetTimeS, breakTimeS, sampleRateHz, samples,',
    'missingSamples, noiseN, loadingRateNPerS, samplingBoundN, samplingBoundPercent, afterBreakN, flags,',
    'events: [{kind, startTimeS, endTimeS, ...}], course: {timeToPeakS, timeToFailureS, rates, toe, impulseNs, workJ, ...}}.',
  ],
  async run({ io, values, positionals, json }) {
    const nPerCount = numberOption(values, 'scale', { not: 0, unit: 'N per count' }) ?? null
    const tare = numberOption(values, 'tare') ?? null
    const capacityN = numberOption(values, 'capacity', { above: 0, unit: 'N' }) ?? null
    const pressSpeedMmPerS = numberOption(values, 'press-speed', { above: 0, unit: 'mm/s' }) ?? null
    const calibrationId = numberOption(values, 'calibration', { from: 1, whole: true })
    refuseTwoScales(calibrationId, nPerCount)
    const { calibrationOfArchive, evaluateCurveFile } = await import('#engine/breaks/evaluateCurveFile.ts')
    const calibration =
      calibrationId === undefined ? null : await calibrationOfArchive(archiveOf(values), programName, calibrationId)
    let failed = false
    for (const file of positionals) {
      try {
        const evaluated = await evaluateCurveFile(file, { nPerCount, tare, capacityN, pressSpeedMmPerS, calibration })
        const { result, zero, column, measuredDisplacement } = evaluated
        if (nPerCount !== null && column !== 'counts')
          io.err(`${file}: evaluated from its column ${column}; --scale is for curves in counts.\n`)
        if (pressSpeedMmPerS !== null && measuredDisplacement)
          io.err(`${file}: work by its column displacement_mm; --press-speed is for curves without one.\n`)
        if (zero?.kind === 'unknown' && result.outcome !== 'none')
          io.err(`${file}: ${zeroUnknownWords}. Give the counts of the empty bench with --tare VALUE.\n`)
        if (json && zero?.kind === 'rest') io.err(`${file}: zero ${plainText(zeroFoundWords(zero))}\n`)
        await io.out(json ? jsonLine({ file, ...result }) : evaluationText(file, evaluated))
      } catch (thrown) {
        failed = true
        const { message, hint } = troubleFrom(thrown)
        io.err(`${message} ${hint}\n`)
      }
    }
    return failed ? 1 : 0
  },
}
