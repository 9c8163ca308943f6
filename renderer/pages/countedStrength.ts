import type { BreakSummary } from '#contract/records/break.ts'

/** The strength that a break counts for, MPa; null for an unloading too, since nothing failed. */
export function countedStrengthMPa({
  outcome,
  strengthMPa,
}: Pick<BreakSummary, 'outcome' | 'strengthMPa'>): number | null {
  return outcome === 'break' ? strengthMPa : null
}
