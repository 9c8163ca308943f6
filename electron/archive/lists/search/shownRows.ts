// Held by tests/archive/lists/search/listSearch.spec.ts.
import { setAsideCause } from '#contract/breaks/decision.ts'
import { outcome } from '#contract/breaks/evaluation.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { setAsideCauseWords } from '#words/breaks/decisionWords.ts'
import { eventNames } from '#words/breaks/eventWords.ts'
import { flagNames } from '#words/breaks/flagWords.ts'
import { outcomeNames, outcomeWord } from '#words/breaks/outcomeWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { resultsWords } from '#words/specimens/resultsWords.ts'
import { countsAsResult } from '../countsOfSpecimen.ts'
import { isSimulated } from '../simulated.ts'

// What a row shows in words that follow from its codes is not stored: which rows show a word is known before one is looked at.

/** Words that rows of a list show, and in SQL which rows. */
type Said = { words: string; rows: string }

const saying = (word: string, all: readonly Said[]) =>
  all.filter(({ words }) => words.includes(word)).map(({ rows }) => rows)

/** Several results on one specimen, in SQL with one place for the word. */
const severalResults = `(s.results > 1 AND instr('${resultsWords(2)!.replace('2', "' || s.results || '")}', ?) > 0)`

const ofSpecimen: readonly Said[] = [
  { words: 'invented demo', rows: 's.demo = 1' },
  { words: 'tight joint', rows: 's.gap_mm = 0' },
]

const ofItsResult: readonly Said[] = [
  { words: 'waiting', rows: 's.started_at IS NULL' },
  { words: outcomeNames.break, rows: 's.typed_result_in_force IS NOT NULL' },
]

const ofBreak: readonly Said[] = [
  ...outcomesSaid(),
  ...Object.entries(flagNames).map(([flag, name]) => ({
    words: folded(name),
    rows: `instr(e.flags, '"${flag}"') > 0`,
  })),
  ...Object.entries(eventNames).map(([kind, name]) => ({
    words: folded(name),
    rows: `instr(e.events, '"kind":"${kind}"') > 0`,
  })),
  { words: simulatedMark, rows: isSimulated },
  ...setAsideCause.options.map((cause) => ({
    words: setAsideCauseWords[cause],
    rows: `b.set_aside_cause = '${cause}'`,
  })),
]

/** The word for the outcome of every break that there can be. */
function outcomesSaid(): Said[] {
  const endings = [null, 'complete', 'interrupted', 'recovered'] as const
  const codes = new Map<string, string[]>()
  for (const one of [null, ...outcome.options])
    for (const ending of endings)
      for (const setAside of [null, '']) {
        const word = folded(outcomeWord({ outcome: one, ending, setAside }))
        const code = `'${one ?? ''} ${ending ?? ''} ${setAside === null ? 0 : 1}'`
        codes.set(word, [...(codes.get(word) ?? []), code])
      }
  const codeOf = "coalesce(b.outcome, '') || ' ' || coalesce(x.ending, '') || ' ' || (b.set_aside IS NOT NULL)"
  return [...codes].map(([words, list]) => ({ words, rows: `${codeOf} IN (${list.join(', ')})` }))
}

/** Joins of `b` (break_current) that `breakShows` needs. */
export const shownJoins = `
  LEFT JOIN break_header h ON h.break_id = b.break_id
  LEFT JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_end x ON x.break_id = b.break_id
  LEFT JOIN evaluation e ON e.evaluation_id = b.evaluation_id`

/** Conditions in SQL of which one holds where a break shows a word; each place in them is for the word. */
export function breakShows(word: string): string[] {
  return [`(${countsAsResult('b')} AND ${severalResults})`, ...saying(word, ofBreak)]
}

/** The same of `s` (specimen_current; in the list of breaks it may be missing), whatever became of it. */
export function specimenShows(word: string): string[] {
  return saying(word, ofSpecimen)
}

/** The same of its result, or of its having none, in the list of specimens. */
export function resultShows(word: string): string[] {
  return [severalResults, ...saying(word, ofItsResult)]
}

/** The same of a break of no specimen. */
export function nobodyShows(word: string): string[] {
  return saying(word, [{ words: 'none', rows: 's.specimen_id IS NULL' }])
}
