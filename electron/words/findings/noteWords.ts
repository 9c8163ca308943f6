import type { FindingOf, NoteCode } from '#contract/findings/lines.ts'
import type { NoFit } from '#domain/findings/censored/censoredFit.ts'
import { simulatedMark } from '../keeping/demoWords.ts'
import { writeCount } from '../units/numbers.ts'

const texts: Record<NoteCode, string> = {
  'no-blocks': 'no block counts, so there is no result',
  'one-block': 'one block alone shows no spread: there is no interval and no limit',
  'one-group': 'there is no other group to compare with',
  'no-spread': 'all values are equal, so that nothing can be said of their spread',
  'one-strength':
    'bonds broke at one strength alone, and no block held more, so that nothing can be said of their spread',
  'no-failure': 'no bond broke, so that the strength of the bonds is not known, only that they held',
  'no-fit': 'the fit found no end',
  'no-reference': 'the reference has no blocks here',
  'no-margin': 'say the margin of equivalence with --margin PERCENT',
  'no-reference-named': 'say which group the others are compared with, by --reference GROUP',
  'few-groups': 'fewer than four groups do not show how much groups differ, so no mean is drawn towards the others',
  'few-ages': 'too few ages for this; a line through two or three would look surer than it is',
  'retention-unbounded':
    'the strength at the first age is so uncertain that any share of it is possible: there is no interval',
  'all-simulated': `all results are ${simulatedMark}: every number here is invented`,
  'some-simulated': `some of these results are ${simulatedMark}, their numbers invented`,
  'one-block-left-out': 'a group of one block has no spread and is left out where spreads are compared',
  'no-spread-no-test':
    'its values are all equal, so that there is no test and no interval that rests on their spread alone',
  'open-interval': 'too few bonds broke to bound the strength on every side: an interval without an end has none there',
  'later-start': 'no block was broken at age 0, so that retention is counted from this age',
  'no-change-to-find':
    'the first or the last age has too few blocks, or no spread, to say which change they could show',
}

/** Why no distribution could be fitted to the bonds of a group. */
export function noFitWords(why: NoFit): string {
  return texts[why === 'not-found' ? 'no-fit' : why === 'no-spread' ? 'one-strength' : why]
}

/** What a note says, in a sentence that names its group and age. */
export function noteText({ code, group, ageMonths }: FindingOf<'note'>): string {
  const age = ageMonths === null ? '' : `${writeCount(ageMonths)} months`
  const of = [group ?? '', age].filter((words) => words !== '').join(', ')
  return of === '' ? `${texts[code]}.` : `${of}: ${texts[code]}.`
}
