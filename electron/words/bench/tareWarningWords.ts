import type { TareWarning } from '#contract/bench/bench.ts'
import type { Quantity } from '../units/quantities.ts'

/** Why the zero should be taken again, and what else it may be. */
export function tareWarningWords(warning: TareWarning, force: Quantity): string {
  if (warning.kind === 'old')
    return `The zero is ${warning.minutes} minutes old: take it again before the next specimen.`
  const { reads, unit } = warning
  const load = `The bench reads ${unit === 'counts' ? `${rounded(reads)}\u00a0counts` : `${rounded(reads * force.factor)}\u00a0${force.unit}`}`
  return warning.kind === 'far-below-zero'
    ? `${load}, far below its zero. If nothing lies on it, take the zero again; if it is under load, the cell is wired in reverse or loaded the other way round.`
    : `${load} at rest since the zero was taken: if nothing lies on it, take the zero again.`
}

/** Two digits, as a decimal number with a minus sign. */
function rounded(value: number): string {
  return String(Number(value.toPrecision(2))).replace('-', '−')
}
