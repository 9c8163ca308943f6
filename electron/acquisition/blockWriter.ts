import type { SampleBlock } from '#contract/breaks/curve.ts'
import { growingColumn } from '#domain/numbers/growingColumn.ts'
import type { Clock } from './clock.ts'

/** Gathers the samples of a capture and hands them on in blocks. */
export type BlockWriter = {
  /** Adds samples [from, to) of arrays; `firstUs`: stream time of the capture's first sample, µs. */
  add(timeUs: Float64Array, firstUs: number, reading: Float64Array, from: number, to: number): void
  /** Hands on what is gathered, if anything. */
  flush(): void
}

/** A block is handed on at the latest so long after its first sample, also when no further one comes, s. */
const blockS = 0.025
/** A block is handed on at the latest with so many samples, so that memory and messages stay small. */
const mostSamples = 16_384

/** Times in a block are whole microseconds since the capture's first sample; its arrays belong to whoever receives it. */
export function createBlockWriter(clock: Clock, deliver: (block: SampleBlock) => void): BlockWriter {
  const timeUs = growingColumn()
  const readings = growingColumn()
  let callOff: (() => void) | null = null

  function flush() {
    callOff?.()
    callOff = null
    if (timeUs.length() === 0) return
    const block = { timeUs: timeUs.values(), readings: readings.values() }
    timeUs.shorten(0)
    readings.shorten(0)
    deliver(block)
  }

  return {
    flush,
    add(times, firstUs, reading, from, to) {
      for (let i = from; i < to; i++) {
        timeUs.push(times[i]! - firstUs)
        readings.push(reading[i]!)
        callOff ??= clock.after(blockS, flush)
        if (timeUs.length() === mostSamples) flush()
      }
    },
  }
}
