import { countOf } from '../units/counts.ts'
import { percentWords, writeSignificant } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** Why there is no fitted line. */
const without = {
  'no-failure': 'No bond failed, so that no line can be fitted.',
  'no-spread': 'The failures show no spread, so that no line can be fitted.',
  'not-found': 'The fit found no end.',
} as const

export type WeibullParts = {
  failed: number
  held: number
  /** null: the reason stands in `why`. */
  parameters: { scaleMPa: number; shape: number } | null
  why: keyof typeof without | null
  /** The strength that one bond in ten does not reach. */
  tenth: { strengthMPa: number; low: number | null; high: number | null } | null
  confidence: number
}

/** What Weibull paper with a group's bonds shows. */
export function weibullWords(name: string, parts: WeibullParts, strength: Quantity): string {
  const { failed, held, parameters, why, tenth, confidence } = parts
  const counts = `${name}: ${countOf(failed, 'bond')} failed${held === 0 ? '' : `, ${countOf(held, 'bond')} outlasted the wood`}.`
  if (parameters === null) return `${counts} ${without[why ?? 'not-found']}`
  const line = `Weibull of shape ${writeSignificant(parameters.shape, 3)} and scale ${strength.text(parameters.scaleMPa)}.`
  if (tenth === null) return `${counts} ${line}`
  const { low, high, strengthMPa } = tenth
  const interval =
    low === null || high === null
      ? 'the data do not bound this on both sides'
      : `${percentWords(100 * confidence)} interval ${strength.number(low)} to ${strength.text(high)}`
  return `${counts} ${line} One bond in ten fails below ${strength.text(strengthMPa)} (${interval}).`
}

/** Where a bond that failed stands. */
export function failedBondWords(name: string, strengthMPa: number, share: number, strength: Quantity): string {
  return `${name}: failed at ${strength.text(strengthMPa)}, ${percentWords(100 * share)} of bonds fail below`
}

/** What a bond whose wood failed first says. */
export function heldBondWords(name: string, strengthMPa: number, strength: Quantity): string {
  return `${name}: held ${strength.text(strengthMPa)}, then the wood failed`
}
