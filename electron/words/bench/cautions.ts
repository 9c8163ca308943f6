import type { Quantity } from '../units/quantities.ts'

/** What everybody who hangs weights must mind. */
export const weightsFall = 'Weights can fall: feet clear.'

/** The load that is never to be exceeded; null: it is not known. */
export function neverAboveWords(capacityN: number | null, force: Quantity): string {
  return `Never above the rated load of ${capacityN === null ? 'cell, press or frame' : force.text(capacityN)}.`
}

/** What the rated load is the rated load of. */
export const ratedLoadWords = 'Rated load of cell, press or frame, whichever is least'

/** What is true of all that a virtual bench shows. */
export const simulatedWords = 'Simulated bench: every number is invented.'
