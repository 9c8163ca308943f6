import { scenarioName } from '#contract/bench/source.ts'
import type { Command } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { lineFormatHelp, lineFormatOption, numberOption, textOption, wordOption } from './optionValues.ts'

export const emulateCommand: Command = {
  name: 'emulate',
  operands: '',
  summary: 'Runs a virtual load-cell amplifier on a pseudo-terminal and prints its path first.',
  options: {
    scenario: { type: 'string', value: 'NAME', help: `what the specimens do (default mixed)` },
    rate: { type: 'string', value: 'HZ', help: 'samples per second, 5 to 10000 (default 80)' },
    'line-format': lineFormatHelp,
    columns: { type: 'string', value: 'LIST', help: 'for columns (default time_us,counts)' },
    breaks: {
      type: 'string',
      value: 'N',
      help: 'loadings until the bench stands still and the amplifier ends (default: goes on)',
    },
    seed: { type: 'string', value: 'N', help: 'the same seed gives the same samples (default 1)' },
    speed: { type: 'string', value: 'X', help: 'simulated seconds per second (default 1)' },
    sent: { type: 'string', value: 'FILE', help: 'writes every sample that was sent: seq,time_us,counts' },
  },
  usesArchive: false,
  details: [
    `Scenarios: ${scenarioName.options.join(', ')}.`,
    'With --json: first {path, lineFormat, rateHz, nPerCount, capacityN}, then one object per loading with what truly',
    'happened in it, and {event: finished, loadings, samplesSent, samplesDropped, linesDamaged} at the end. Ctrl-C ends it.',
  ],
  async run({ io, values, json }) {
    const lineFormat = lineFormatOption(values)
    const { runEmulator } = await import('#engine/bench/device/emulator.ts')
    await runEmulator(
      {
        scenario: wordOption(values, 'scenario', scenarioName.options) ?? 'mixed',
        rateHz: numberOption(values, 'rate', { from: 5, to: 10_000 }) ?? 80,
        lineFormat,
        breaks: numberOption(values, 'breaks', { from: 1, whole: true }) ?? null,
        seed: numberOption(values, 'seed', { from: 0, whole: true }) ?? 1,
        speed: numberOption(values, 'speed', { above: 0, to: 1000 }) ?? 1,
        sentFile: textOption(values, 'sent') ?? null,
      },
      {
        started: (facts) => void io.out(json ? jsonLine(facts) : `${facts.path}\n`),
        loading: (truth) =>
          void io.out(
            json
              ? jsonLine(truth)
              : `loading ${truth.number} (${truth.kind}): ${truth.outcome} at ${truth.peakN.toFixed(1)} N, ${truth.samplesSent} samples\n`,
          ),
        finished: (totals) =>
          void io.out(
            json
              ? jsonLine({ event: 'finished', ...totals })
              : `finished after ${totals.loadings} loadings, ${totals.samplesSent} samples sent\n`,
          ),
      },
      io.interrupt,
    )
    return 0
  },
}
