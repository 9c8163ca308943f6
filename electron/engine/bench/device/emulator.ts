// Held by tests/shells/commands/emulateCommand.spec.ts.
import { open } from 'node:fs/promises'
import { systemClock } from '#acquisition/clock.ts'
import { createBenchModel } from '#acquisition/virtual/benchModel.ts'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import { openVirtualPort } from '#acquisition/virtual/port/virtualPort.ts'
import type { LineFormatChoice, ScenarioName } from '#contract/bench/source.ts'
import { refuseDatabase } from '#exchange/wholeFile.ts'

export type EmulatorOptions = {
  scenario: ScenarioName
  rateHz: number
  lineFormat: LineFormatChoice
  breaks: number | null
  seed: number
  speed: number
  /** Where every sample that was sent is written down; null: nowhere. */
  sentFile: string | null
}

export type EmulatorListener = {
  started(facts: { path: string; lineFormat: string; rateHz: number; nPerCount: number; capacityN: number }): void
  /** A loading is over; what truly happened in it. */
  loading(truth: LoadingTruth): void
  finished(totals: { loadings: number; samplesSent: number; samplesDropped: number; linesDamaged: number }): void
}

/** How often finished loadings are looked for, s. */
const lookEveryS = 0.1

/** Runs the virtual amplifier on a pseudo-terminal until its bench is done or it is stopped. */
export async function runEmulator(
  options: EmulatorOptions,
  listener: EmulatorListener,
  stop: AbortSignal,
): Promise<void> {
  const { sentFile, ...amplifier } = options
  if (sentFile !== null) await refuseDatabase(sentFile)
  const port = await openVirtualPort(amplifier, systemClock)
  const { nPerCount, capacityN } = port.amplifier.bench.characteristic
  listener.started({
    path: port.path,
    lineFormat: options.lineFormat.name,
    rateHz: options.rateHz,
    nPerCount,
    capacityN,
  })

  const { truths } = port.amplifier.bench
  let told = 0
  const tell = () => {
    for (; told < truths.length; told++) listener.loading(truths[told]!)
  }
  let callOff: () => void = () => {}
  const look = () => {
    tell()
    callOff = systemClock.after(lookEveryS, look)
  }
  look()
  if (stop.aborted) port.stop()
  else stop.addEventListener('abort', port.stop, { once: true })
  const summary = await port.finished
  stop.removeEventListener('abort', port.stop)
  callOff()
  tell()
  if (sentFile !== null) await writeSent(sentFile, options, summary.samplesSent)
  listener.finished({
    loadings: truths.length,
    samplesSent: summary.samplesSent,
    samplesDropped: summary.samplesDropped,
    linesDamaged: summary.linesDamaged,
  })
}

/** The model is seeded, so that the samples it sent are made again instead of being kept. */
async function writeSent(file: string, options: EmulatorOptions, count: number): Promise<void> {
  const model = createBenchModel(options)
  const length = 8192
  const samples = {
    timeUs: new Float64Array(length),
    counts: new Float64Array(length),
    sequence: new Float64Array(length),
  }
  const output = await open(file, 'w')
  try {
    await output.write('seq,time_us,counts\n')
    for (let left = count; left > 0; ) {
      const made = Math.min(left, model.fill(samples))
      if (made === 0) break
      let text = ''
      for (let i = 0; i < made; i++) text += `${samples.sequence[i]},${samples.timeUs[i]},${samples.counts[i]}\n`
      await output.write(text)
      left -= made
    }
  } finally {
    await output.close()
  }
}
