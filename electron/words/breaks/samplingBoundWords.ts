import { writeLimit } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** How far the true peak may lie above the highest sample: the force in N, and in percent of the peak; null: not known. */
export type SamplingBound = { boundN: number | null; percent: number | null }

/** What the sampling bound says, as a sentence without its capital and full stop. */
export function samplingBoundWords({ boundN, percent }: SamplingBound, force: Quantity): string {
  if (boundN === null || percent === null) return 'how much higher the true peak may lie is not known'
  const bound = limitIn(boundN, force)
  const upTo = bound.startsWith('below') ? bound : `up to ${bound}`
  return `the true peak may lie ${upTo} (${writeLimit(percent, 2)} %) higher`
}

/** The sampling bound as a figure that may be added to the peak: "+17.9 N (0.23 %)". */
export function samplingBoundFigure({ boundN, percent }: SamplingBound, force: Quantity): string {
  if (boundN === null) return 'not known'
  const share = percent === null ? '' : ` (${writeLimit(percent, 2)} %)`
  const bound = limitIn(boundN, force)
  return `${bound.startsWith('below') ? '' : '+'}${bound}${share}`
}

const limitIn = (boundN: number, { factor, unit }: Quantity) => `${writeLimit(boundN * factor, 1)}\u00a0${unit}`
