import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Ending } from '#contract/breaks/capture.ts'

export const endingWords: Record<Ending, string> = {
  complete: 'ended by the break detector',
  interrupted: 'cut short: the device went away',
  recovered: 'recovered after the program had ended',
}

/** The outcome of a break as a short word for lists. */
export function outcomeWord(summary: Pick<BreakSummary, 'outcome' | 'ending' | 'setAside'>): string {
  if (summary.setAside !== null) return 'set aside'
  if (summary.ending === null) return 'running'
  if (summary.outcome === 'break') return 'broke'
  // Nobody saw the load go down where the capture ended before it did
  if (summary.outcome === 'unloading') return summary.ending === 'complete' ? 'unloaded' : 'cut short'
  return summary.outcome === 'none' ? 'not loaded' : 'not evaluated'
}
