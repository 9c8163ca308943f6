import type { LineFormatChoice } from '#contract/bench/source.ts'
import { type BenchModel, type BenchModelOptions, type BenchSamples, createBenchModel } from './benchModel.ts'
import { createLineEncoder } from './virtualLines.ts'

export type VirtualAmplifierOptions = BenchModelOptions & {
  lineFormat?: LineFormatChoice
  damagedShare?: number
  lineEnd?: '\n' | '\r\n'
}

/** The bench with its amplifier's serial side: what would leave the wire up to a moment of device time. */
export type VirtualAmplifier = {
  readonly bench: BenchModel
  readonly lineFormat: LineFormatChoice
  /** Bytes of all samples before `deviceTimeS` not yet given, or of the next `mostSamples` of them. */
  bytesUntil(deviceTimeS: number, mostSamples?: number): Uint8Array
  /** Device time up to which everything has been given, s. */
  givenUntilS(): number
  over(): boolean
  lines(): { sent: number; damaged: number }
}

export const virtualLineFormat: LineFormatChoice = { name: 'checked', columns: [] }

const blockLength = 4096

/** Joins the model of the bench with the encoder of its lines. */
export function createVirtualAmplifier(options: VirtualAmplifierOptions): VirtualAmplifier {
  const bench = createBenchModel(options)
  const lineFormat = options.lineFormat ?? virtualLineFormat
  const encoder = createLineEncoder({
    lineFormat,
    characteristic: bench.characteristic,
    seed: options.seed,
    ...(options.damagedShare === undefined ? {} : { damagedShare: options.damagedShare }),
    ...(options.lineEnd === undefined ? {} : { lineEnd: options.lineEnd }),
  })
  const samples: BenchSamples = {
    timeUs: new Float64Array(blockLength),
    counts: new Float64Array(blockLength),
    sequence: new Float64Array(blockLength),
  }

  return {
    bench,
    lineFormat,
    bytesUntil(deviceTimeS, mostSamples = Number.POSITIVE_INFINITY) {
      for (let left = mostSamples; left > 0; ) {
        const room = Math.min(left, blockLength)
        const part = room === blockLength ? samples : shortened(samples, room)
        const written = bench.fill(part, deviceTimeS)
        encoder.add(part, written)
        if (written < room) break
        left -= written
      }
      return encoder.take()
    },
    givenUntilS: () => {
      const { sent, dropped } = bench.counts()
      return (sent + dropped) / bench.rateHz
    },
    over: () => bench.over(),
    lines: () => encoder.lines(),
  }
}

function shortened(samples: BenchSamples, length: number): BenchSamples {
  return {
    timeUs: samples.timeUs.subarray(0, length),
    counts: samples.counts.subarray(0, length),
    sequence: samples.sequence.subarray(0, length),
  }
}
