import type { Flag } from '#contract/breaks/evaluation.ts'
import { writeFixed } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'
import { flagListWords } from './flagWords.ts'
import { outcomeWords } from './outcomeWords.ts'

/** What is known of a break as soon as it is stored. Forces in N, uncertainty k = 2. */
export type CapturedBreak = {
  breakId: number
  outcome: 'break' | 'unloading'
  peakN: number | null
  samples: number
  flags: readonly Flag[]
  timesVerified: number | null
  expandedUncertaintyN: number | null
}

/** A break that was just captured, in one line. */
export function capturedWords(captured: CapturedBreak, force: Quantity): string {
  const { breakId, outcome, peakN, samples, flags, timesVerified, expandedUncertaintyN } = captured
  const text = (forceN: number) => `${writeFixed(forceN * force.factor, 1)} ${force.unit}`
  const ended = outcome === 'break' ? `${outcomeWords.break} at` : `was ${outcomeWords.unloading} after`
  const within = expandedUncertaintyN === null ? '' : ` ± ${text(expandedUncertaintyN)} (k = 2)`
  const remarks = flagListWords({ flags, verification: { timesVerified } })
  const told = [`${samples} samples`, ...(remarks === '' ? [] : [remarks])].join('; ')
  return `break ${breakId} ${ended} ${peakN === null ? 'unknown force' : text(peakN)}${within} (${told})`
}
