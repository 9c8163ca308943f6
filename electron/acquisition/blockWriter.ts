import type { SampleBlock } from '#contract/breaks/curve.ts'
import type { Clock } from './clock.ts'

/** Gathers the samples of a capture and hands them on in blocks. */
export type BlockWriter = {
  /** Time in whole microseconds since the capture's first sample. */
  push(timeUs: number, reading: number): void
  /** The same for samples [from, to) of arrays; `firstUs`: stream time of the capture's first sample, µs. */
  add(timeUs: Float64Array, firstUs: number, reading: Float64Array, from: number, to: number): void
  /** Hands on what is gathered, if anything. */
  flush(): void
}

/** A block is handed on at the latest so long after its first sample, also when no further one comes, s. */
const blockS = 0.05
/** A block is handed on at the latest with so many samples, so that memory and messages stay small. */
const mostSamples = 16_384

/** The arrays of a block belong to whoever receives it. */
export function createBlockWriter(clock: Clock, deliver: (block: SampleBlock) => void): BlockWriter {
  let timeUs = new Float64Array(256)
  let readings = new Float64Array(256)
  let length = 0
  let callOff: (() => void) | null = null

  function flush() {
    callOff?.()
    callOff = null
    if (length === 0) return
    const block = { timeUs: timeUs.slice(0, length), readings: readings.slice(0, length) }
    length = 0
    deliver(block)
  }

  function push(time: number, reading: number): void {
    if (length === timeUs.length) {
      const larger = (array: Float64Array) => {
        const room = new Float64Array(2 * array.length)
        room.set(array)
        return room
      }
      timeUs = larger(timeUs)
      readings = larger(readings)
    }
    timeUs[length] = time
    readings[length] = reading
    length += 1
    callOff ??= clock.after(blockS, flush)
    if (length === mostSamples) flush()
  }

  return {
    flush,
    push,
    add(times, firstUs, reading, from, to) {
      for (let i = from; i < to; i++) push(times[i]! - firstUs, reading[i]!)
    },
  }
}
