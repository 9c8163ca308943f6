import type { BreakSummary } from '#contract/breaks/break.ts'
import type { Decision, OverruledPeak, SetAsideCause } from '#contract/breaks/decision.ts'
import { flagNames } from './flagWords.ts'

export const decisionWords: Record<Decision['kind'], string> = {
  'set-aside': 'Set aside',
  'taken-back': 'Counts again',
  reassigned: 'Moved to another specimen',
  'peak-picked': 'Peak picked by hand',
  'premature-failure': 'Declared a premature failure',
  'peak-as-found': 'Back to the peak found',
}

export const setAsideCauseWords: Record<SetAsideCause, string> = {
  'specimen-slipped': 'specimen slipped',
  'wrong-block': 'wrong specimen',
  'fixture-touched': 'fixture touched',
  other: 'other',
}

/** Why a break is set aside: what happened, where that was asked, and the reason. */
export function setAsideWords({ setAside, setAsideCause }: Pick<BreakSummary, 'setAside' | 'setAsideCause'>): string {
  const cause = setAsideCause === null || setAsideCause === 'other' ? '' : `${setAsideCauseWords[setAsideCause]}; `
  return `${cause}${setAside ?? ''}`
}

/** Whose word stands in place of the peak found, for a list; `at`: where on the curve, where that is said too. */
export function overruledWords({ kind, by, reason }: OverruledPeak, at = ''): string {
  return `${flagNames[kind]}${at === '' ? '' : ` at ${at},`} by ${by}: ${reason}`
}

/** What an overruled peak leaves as it is. */
export const peakStaysWords =
  'The curve and the peak found by the program stay in the record, and you can take this back at any time.'
