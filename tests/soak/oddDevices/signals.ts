import { crc16 } from '#acquisition/lineFormats/lineCheck.ts'
import type { LineFormatChoice } from '#contract/bench/source.ts'

/** Readings of one loading: 0.01 N a count, 4000 N at 10 s and then nothing, with half a newton of scatter. */
export const zeroCounts = 48_213
export const loadsToN = 4000
const loadsFromS = 6
const breaksAtS = 10

/** Scatter that is the same each time, in counts: as uneven as noise, SD 29. */
export function scatter(i: number): number {
  const mixed = Math.imul(i ^ (i >>> 7), 0x9e3779b1)
  return (((mixed ^ (mixed >>> 15)) >>> 0) % 101) - 50
}

/** Force of that loading at a time, N. */
export function forceAt(timeS: number): number {
  return timeS < loadsFromS || timeS > breaksAtS ? 0 : (loadsToN * (timeS - loadsFromS)) / (breaksAtS - loadsFromS)
}

/** Counts of reading i, at 80 a second. */
export const good = (i: number, rateHz = 80) => Math.round(zeroCounts + 100 * forceAt(i / rateHz) + scatter(i))

/** At rest, whatever the time. */
export const idle = (i: number) => zeroCounts + scatter(i)

export const number: LineFormatChoice = { name: 'number', columns: [] }
export const checked: LineFormatChoice = { name: 'checked', columns: [] }
export const crc: LineFormatChoice = { name: 'crc', columns: [] }
export const columns = (...names: LineFormatChoice['columns']): LineFormatChoice => ({
  name: 'columns',
  columns: names,
})

/** A checked line. */
export function checkedLine(sequence: number, timeUs: number, counts: number): string {
  const content = `BL,${sequence},${timeUs},${counts}`
  let sum = 0
  for (const letter of content) sum ^= letter.charCodeAt(0)
  return `$${content}*${sum.toString(16).toUpperCase().padStart(2, '0')}\n`
}

/** A line of the format crc. */
export function crcLine(sequence: number, timeUs: number, counts: number): string {
  const content = `BC,${sequence},${timeUs},${counts}`
  const bytes = new TextEncoder().encode(content)
  return `$${content}*${crc16(bytes, 0, bytes.length).toString(16).toUpperCase().padStart(4, '0')}\n`
}

/** Microseconds of reading i at 80 a second, as a 32-bit counter that began at `fromUs`. */
export const usOf = (i: number, fromUs = 0) => (fromUs + 12_500 * i) % 2 ** 32
