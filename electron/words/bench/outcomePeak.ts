import type { BenchState } from '#contract/bench/bench.ts'

/**
 * The highest load of the capture that just ended, N: of its own record, and until that is stored what was seen while it ran;
 * never of the capture before. null where there is no force.
 */
export function outcomePeakN(
  bench: Pick<BenchState, 'lastBreak' | 'outcomeBreakId' | 'runningPeak' | 'scale'>,
): number | null {
  const { lastBreak, outcomeBreakId, runningPeak, scale } = bench
  if (lastBreak !== null && lastBreak.breakId === outcomeBreakId) return lastBreak.peakN
  return scale.kind === 'none' ? null : runningPeak
}

/** Whether a capture has ended whose record is not there yet: what `lastBreak` says is still of the one before. */
export function isStoring({ phase, outcomeBreakId }: Pick<BenchState, 'phase' | 'outcomeBreakId'>): boolean {
  return (phase === 'broke' || phase === 'unloaded') && outcomeBreakId === null
}
