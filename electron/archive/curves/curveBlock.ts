import { createHash } from 'node:crypto'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import { packedLength, packNumbers, unpackNumbers } from './bitPacking.ts'
import { decimalReadings, powerOfTen } from './decimals.ts'

/** A stretch of a curve as its table row holds it; FORMAT.md, "Curve coding", says how to read one. */
export type CurveBlock = {
  samples: number
  first_us: number
  last_us: number
  interval_us: number
  times: Uint8Array
  reading_coding: 'decimal' | 'float64'
  decimals: number
  differences: number
  first_mantissa: number
  first_step: number
  readings: Uint8Array
  sha256: string
}

/** Differences of the values to the one before, without the first value. */
function differencesOf(values: Float64Array): Float64Array {
  const differences = new Float64Array(Math.max(values.length - 1, 0))
  for (let i = 1; i < values.length; i++) differences[i - 1] = values[i]! - values[i - 1]!
  return differences
}

/** The first difference is taken as known, so that the first number stored is 0. */
function secondDifferences(differences: Float64Array): Float64Array {
  const changes = new Float64Array(differences.length)
  for (let i = 1; i < differences.length; i++) changes[i] = differences[i]! - differences[i - 1]!
  return changes
}

type ReadingColumns = Pick<
  CurveBlock,
  'reading_coding' | 'decimals' | 'differences' | 'first_mantissa' | 'first_step' | 'readings'
>

function encodeReadings(readings: Float64Array): ReadingColumns {
  const whole = decimalReadings(readings)
  if (whole === null) {
    const bytes = new Uint8Array(readings.length * 8)
    const view = new DataView(bytes.buffer)
    for (let i = 0; i < readings.length; i++) view.setFloat64(i * 8, readings[i]!, true)
    return {
      reading_coding: 'float64',
      decimals: 0,
      differences: 0,
      first_mantissa: 0,
      first_step: 0,
      readings: bytes,
    }
  }
  // A steep, quiet ramp is smaller as changes of slope; noise is smaller as plain steps.
  const steps = differencesOf(whole.mantissas)
  const changes = secondDifferences(steps)
  const bySteps = packedLength(steps) <= packedLength(changes)
  return {
    reading_coding: 'decimal',
    decimals: whole.decimals,
    differences: bySteps ? 1 : 2,
    first_mantissa: whole.mantissas[0]!,
    first_step: bySteps ? 0 : (steps[0] ?? 0),
    readings: packNumbers(bySteps ? steps : changes),
  }
}

function checksum(times: Uint8Array, readings: Uint8Array): string {
  return createHash('sha256').update(times).update(readings).digest('hex')
}

/** Whether the bytes of a block are those that its checksum was made of. */
export function bytesMatch({ times, readings, sha256 }: CurveBlock): boolean {
  return checksum(times, readings) === sha256
}

/** Codes samples without loss. The times must be whole and rise strictly, the readings finite, none missing. */
export function encodeBlock(block: SampleBlock): CurveBlock {
  const { timeUs, readings } = block
  if (timeUs.length === 0) throw new RangeError('encodeBlock requires at least one sample')
  const intervals = differencesOf(timeUs)
  const times = packNumbers(secondDifferences(intervals))
  const coded = encodeReadings(readings)
  return {
    samples: timeUs.length,
    first_us: timeUs[0]!,
    last_us: timeUs[timeUs.length - 1]!,
    interval_us: intervals[0] ?? 0,
    times,
    ...coded,
    sha256: checksum(times, coded.readings),
  }
}

/** Replaces numbers by their running sum that starts at `start`. */
function accumulate(numbers: Float64Array, start: number): void {
  let sum = start
  for (let i = 0; i < numbers.length; i++) {
    sum += numbers[i]!
    numbers[i] = sum
  }
}

/**
 * Decodes a block into `timeUs` and `readings`, which are as long as it has samples. Throws RangeError naming what does not
 * hold: the coding, the number of bytes, the time of the last sample, or the checksum, which of a block that no seal covers
 * yet takes in more than its bytes: `isWhole` says whether it holds.
 */
export function decodeBlock(
  block: CurveBlock,
  timeUs: Float64Array,
  readings: Float64Array,
  isWhole: boolean = bytesMatch(block),
): void {
  if (!isWhole) throw new RangeError('it does not match its SHA-256')
  timeUs[0] = block.first_us
  const laterTimes = timeUs.subarray(1)
  unpackNumbers(block.times, laterTimes)
  accumulate(laterTimes, block.interval_us)
  accumulate(laterTimes, block.first_us)
  if (timeUs[timeUs.length - 1] !== block.last_us) throw new RangeError('the last time is not the one recorded')

  if (block.reading_coding === 'float64') {
    if (block.readings.length !== readings.length * 8) throw new RangeError('the readings have a wrong number of bytes')
    const view = new DataView(block.readings.buffer, block.readings.byteOffset, block.readings.byteLength)
    for (let i = 0; i < readings.length; i++) readings[i] = view.getFloat64(i * 8, true)
    return
  }
  // What is typed as one of two may be anything in a damaged row.
  if (block.reading_coding !== 'decimal') throw new RangeError('the coding of its readings is none that is known')
  readings[0] = block.first_mantissa
  const later = readings.subarray(1)
  unpackNumbers(block.readings, later)
  if (block.differences === 2) accumulate(later, block.first_step)
  accumulate(later, block.first_mantissa)
  if (block.decimals === 0) return
  const power = powerOfTen(block.decimals)
  for (let i = 0; i < readings.length; i++) readings[i] = readings[i]! / power
}
