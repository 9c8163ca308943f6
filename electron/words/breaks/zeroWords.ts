import { writeFixed } from '../units/numbers.ts'

/** How the zero of a curve in counts was found before its load. */
export function zeroFoundWords({ offsetN, readings }: { offsetN: number; readings: number }): string {
  return `${writeFixed(offsetN, 2)} N taken off, the mean of ${readings} steady readings before the load`
}

/** That no zero could be found, and what that means for the forces. */
export const zeroUnknownWords =
  'nothing is steady before the load, so no zero was taken off: every force may be off by the zero of the cell'
