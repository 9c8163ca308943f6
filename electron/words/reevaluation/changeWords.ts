import type { Flag } from '#contract/breaks/evaluation.ts'
import { curveEventKind } from '#contract/breaks/evaluation.ts'
import type { ChangesPage } from '#contract/reevaluation/changes.ts'
import { eventNames } from '../breaks/eventWords.ts'
import { flagNames } from '../breaks/flagWords.ts'
import { writeCount } from '../units/numbers.ts'

/** A list of words, or that there is none. */
export function listWords(words: readonly string[]): string {
  return words.length === 0 ? 'none' : words.join(', ')
}

/** Names of flags. */
export function flagsAsWords(flags: readonly Flag[]): string[] {
  return flags.map((flag) => flagNames[flag])
}

/** An event of a result by its name, with the cycles that it is said to have: "Stick-slip (4)". */
export function eventAsWords(event: string): string {
  const [, kind = event, cycles] = /^([a-z-]*[a-z])\D*(\d+)?\D*$/.exec(event) ?? []
  const known = curveEventKind.safeParse(kind)
  const name = known.success ? eventNames[known.data] : event
  return known.success && cycles !== undefined ? `${name} (${cycles})` : name
}

/** Which breaks a person has spoken of, since no result changes that; null where there are none. */
export function standingWords({ overruled, setAside }: Pick<ChangesPage['figures'], 'overruled' | 'setAside'>) {
  const parts = [
    overruled === 0 ? null : `${writeCount(overruled)} ${overruled === 1 ? 'peak is' : 'peaks are'} as a person said`,
    setAside === 0 ? null : `${writeCount(setAside)} ${setAside === 1 ? 'break is' : 'breaks are'} set aside`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? null : `${parts.join(', ')}: that stays so, whatever is adopted.`
}
