import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Ending } from '#contract/breaks/capture.ts'
import type { Outcome } from '#contract/breaks/evaluation.ts'

export const endingWords: Record<Ending, string> = {
  complete: 'complete',
  interrupted: 'cut short: the amplifier was disconnected',
  recovered: 'recovered after the program had ended',
}

/** How a loading ended. */
export const outcomeWords: Record<Outcome, string> = {
  break: 'broke',
  unloading: 'unloaded without a break',
  none: 'nothing was loaded',
}

/** The same as a short word for lists. */
export const outcomeNames: Record<Outcome, string> = { break: 'broke', unloading: 'unloaded', none: 'not loaded' }

/** The outcome of a break as a short word for lists. */
export function outcomeWord(summary: Pick<BreakSummary, 'outcome' | 'ending' | 'setAside'>): string {
  if (summary.setAside !== null) return 'set aside'
  if (summary.ending === null) return 'running'
  if (summary.outcome === null) return 'not evaluated'
  // Nobody saw the load go down where the capture ended before it did
  if (summary.outcome === 'unloading' && summary.ending !== 'complete') return 'cut short'
  return outcomeNames[summary.outcome]
}
