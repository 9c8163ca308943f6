import type { UnattendedEntry, UnattendedOptions } from '#engine/unattendedCapture.ts'
import { capturedWords } from '#words/breaks/capturedWords.ts'
import { headText } from '#words/keeping/headWords.ts'
import { chainFindingWords } from '#words/keeping/verifyWords.ts'
import { countOf } from '#words/units/counts.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'
import { type Command, UsageError } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { lineFormatHelp, lineFormatOption, numberOption, refuseTwoScales, textOption } from './optionValues.ts'
import { archiveOf, headsFile } from './ownArchive.ts'
import { programName } from './programName.ts'

export const captureCommand: Command = {
  name: 'capture',
  operands: '',
  summary: 'Captures breaks from a serial port into the archive, unattended.',
  options: {
    port: { type: 'string', value: 'PATH', help: 'the serial port (needed)' },
    baud: { type: 'string', value: 'N', help: 'baud rate (default 115200)' },
    'line-format': lineFormatHelp,
    columns: { type: 'string', value: 'LIST', help: 'for columns: time_us, time_ms, time_s, seq, counts, force_N, -' },
    capacity: { type: 'string', value: 'N', help: 'rated load of the cell, N' },
    calibration: { type: 'string', value: 'ID', help: 'a calibration of the archive (default: the one in force)' },
    scale: { type: 'string', value: 'N_PER_COUNT', help: 'newtons per count, uncalibrated' },
    waiting: { type: 'boolean', help: 'breaks belong to the waiting specimens, in the order of their numbers' },
    breaks: { type: 'string', value: 'N', help: 'stops after so many breaks' },
    timeout: { type: 'string', value: 'S', help: 'stops after so many seconds' },
  },
  usesArchive: true,
  details: [
    'The zero is taken by itself as soon as the signal is steady, and again between breaks. Ctrl-C ends it; a capture',
    'that runs then is kept and marked interrupted. Exit 1 when fewer breaks came than --breaks asked for.',
    'Keep hands and face away from a loaded specimen: nobody is asked before the next capture.',
    '',
    'With --json, one object per event:',
    '  {event: connected, path, lineFormat}   {event: tared, offset, sd}   {event: loading, timeS, breakId}',
    '  {event: break | unloading, breakId, peakN, peakTimeS, samples, missingSamples, sampleRateHz, loadingRateNPerS,',
    '   samplingBoundN, samplingBoundPercent, flags, calibrationId, timesVerified, expandedUncertaintyN}',
    '  {event: gap, timeS, missing}   {event: restarted, timeS}   {event: disconnected}   {event: reconnected}',
    '  {event: rejected-line, count, example}   {event: head, count, hash, instant}   {event: finished, breaks}',
    'The head is that of the chain of checksums when all is on disk: note it, and verify --head COUNT:HASH tells later',
    'whether the archive still holds all that it held then.',
  ],
  async run({ io, values, json }) {
    const path = textOption(values, 'port')
    if (path === undefined) throw new UsageError('"capture" needs --port PATH. "breakledger ports" lists the ports.')
    const lineFormat = lineFormatOption(values)
    const calibration = numberOption(values, 'calibration', { from: 1, whole: true })
    const scale = numberOption(values, 'scale', { not: 0, unit: 'N per count' })
    refuseTwoScales(calibration, scale)
    const wanted = numberOption(values, 'breaks', { from: 1, whole: true }) ?? null
    const options: UnattendedOptions = {
      archivePath: archiveOf(values),
      program: programName,
      keptHeads: headsFile(),
      source: {
        kind: 'serial',
        path,
        baudRate: numberOption(values, 'baud', { from: 1, whole: true }) ?? 115200,
        lineFormat,
      },
      capacityN: numberOption(values, 'capacity', { above: 0, unit: 'N' }) ?? null,
      calibrationId: calibration ?? null,
      nPerCount: scale ?? null,
      withSpecimens: values.waiting === true,
      breaks: wanted,
      timeoutS: numberOption(values, 'timeout', { above: 0, unit: 's' }) ?? null,
    }
    const { captureUnattended } = await import('#engine/unattendedCapture.ts')
    const { breaks } = await captureUnattended(
      options,
      {
        entry: (entry) => void io.out(json ? jsonLine(entry) : describe(entry)),
        trouble: (trouble) => io.err(`${trouble.message} ${trouble.hint}\n`),
        chainFinding: (finding) => io.err(`${chainFindingWords(finding)}\n`),
      },
      io.interrupt,
    )
    return wanted !== null && breaks < wanted ? 1 : 0
  },
}

const { force } = quantitiesIn('SI')

function describe(entry: UnattendedEntry): string {
  return `${plainText(entryWords(entry))}\n`
}

function entryWords(entry: UnattendedEntry): string {
  switch (entry.event) {
    case 'connected':
      return `connected to ${entry.path}, lines as ${entry.lineFormat}`
    case 'tared':
      return `zero taken: offset ${entry.offset.toPrecision(6)}, SD ${entry.sd.toPrecision(2)}`
    case 'loading':
      return `loading began at ${entry.timeS.toFixed(2)} s (break ${entry.breakId})`
    case 'break':
    case 'unloading':
      return capturedWords({ ...entry, outcome: entry.event }, force)
    case 'gap':
      return `${entry.missing} samples are missing at ${entry.timeS.toFixed(3)} s`
    case 'restarted':
      return `the amplifier restarted at ${entry.timeS.toFixed(3)} s`
    case 'disconnected':
      return 'the port went away; waiting for it'
    case 'reconnected':
      return 'the port is back'
    case 'rejected-line':
      return `${countOf(entry.count, 'line is', 'lines are')} no reading, such as "${entry.example}"`
    case 'head':
      return `head of the chain: ${headText(entry)}`
    case 'finished':
      return `finished after ${countOf(entry.breaks, 'break')}`
  }
}
