import type { BreakSummary } from '#contract/breaks/break.ts'

/** Where the reading or the bench came to its end the load may have gone higher; a load read below that end is what it is. */
export function isLowerLimit(
  { flags, overruled, peakN }: Pick<BreakSummary, 'flags' | 'overruled' | 'peakN'>,
  capacityN: number | null,
): boolean {
  const overloaded = overruled === null || (capacityN !== null && peakN !== null && peakN > capacityN)
  return flags.includes('clipped') || flags.includes('gap-at-peak') || (overloaded && flags.includes('over-capacity'))
}
