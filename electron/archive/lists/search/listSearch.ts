import { folded } from '#domain/text/naturalOrder.ts'
import { loadsToFind, momentToFind } from '#words/breaks/shownInLists.ts'
import type { Database } from '../../core/database.ts'
import { breakShows, nobodyShows, resultShows, shownJoins, specimenShows } from './shownRows.ts'

// A row is found by all that it shows, in the words in which it shows it. What hangs on the time zone, and the figures of a
// break, are made while searching and never stored.

/** A condition with the values for its places. */
export type SearchCondition = {
  condition: string
  values: (string | number)[]
}

/** The figures of what a specimen `s` is made of, without those of its result. */
const madeFigures = 'substr(s.figures, 1, instr(s.figures, char(10)))'

const momentFits = 'moment_fits(?, b.started_at)'
const loadsFit = `loads_fit(?, b.peak_n, CASE WHEN b.outcome = 'break' THEN b.peak_n / s.area_mm2 END, b.wood_failure_percent)`

const either = (conditions: readonly string[]) => `(${conditions.join(' OR ')})`

/**
 * A condition on the rows of a list: each word occurs in its stored texts, or in what else it shows. `s` is specimen_current, and
 * `b` break_current where it is a list of breaks. `studiesCalled`: the studies in whose titles a word occurs.
 */
export function searchCondition(
  words: readonly string[],
  list: 'specimens' | 'breaks',
  studiesCalled: (word: string) => readonly number[] = () => [],
): SearchCondition {
  const fits = list === 'breaks' ? breakFits : specimenFits
  const each = words.map((word) => fits(word, [...specimenShows(word), ...ofStudies(studiesCalled(word))]))
  return {
    condition: each.map((one) => `AND ${one}`).join(' '),
    values: words.flatMap((word, at) => Array<string>(each[at]!.split('?').length - 1).fill(word)),
  }
}

const ofStudies = (ids: readonly number[]) => (ids.length === 0 ? [] : [`s.study_id IN (${ids.join(', ')})`])

function specimenFits(word: string, ofSpecimen: readonly string[]): string {
  const ofBreak = ['instr(b.note_search, ?) > 0', ...breakShows(word)]
  if (isMoment(word)) ofBreak.push(momentFits)
  return either([
    'instr(s.search, ?) > 0',
    ...(isFigure(word) ? ['instr(s.figures, ?) > 0'] : []),
    ...ofSpecimen,
    ...resultShows(word),
    `(s.break_in_force IS NOT NULL AND EXISTS (SELECT 1 FROM break_current b ${shownJoins}
       WHERE b.break_id = s.break_in_force AND ${either(ofBreak)}))`,
  ])
}

function breakFits(word: string, ofSpecimen: readonly string[]): string {
  return either([
    'instr(s.search, ?) > 0',
    'instr(b.note_search, ?) > 0',
    ...ofSpecimen,
    ...nobodyShows(word),
    ...(isMoment(word) ? [momentFits] : []),
    ...(isFigure(word) ? [`instr(${madeFigures}, ?) > 0`, loadsFit] : []),
    `EXISTS (SELECT 1 FROM (SELECT 1) ${shownJoins} WHERE ${either(breakShows(word))})`,
  ])
}

const taught = new WeakSet<Database>()

/** Made texts are kept for the next row, the next letter and the next page, so many of each. */
const mostKept = 100_000

function kept<Key extends string>(make: (key: Key) => string): (key: Key) => string {
  const known = new Map<Key, string>()
  return (key) => {
    const before = known.get(key)
    if (before !== undefined) return before
    if (known.size >= mostKept) known.clear()
    const made = make(key)
    known.set(key, made)
    return made
  }
}

/** Makes known to a connection whether a word occurs in the moment of a break, and whether in its loads. */
export function teachSearch(database: Database): void {
  if (taught.has(database)) return
  taught.add(database)
  const momentText = kept((startedAt) => folded(momentToFind(startedAt)))
  const loadsText = kept((loads) => folded(loadsToFind(...(JSON.parse(loads) as Parameters<typeof loadsToFind>))))
  database.function('moment_fits', (word: string, startedAt: string) => Number(momentText(startedAt).includes(word)))
  database.function('loads_fit', { varargs: true }, (word: string, ...loads: unknown[]) =>
    Number(loadsText(JSON.stringify(loads)).includes(word)),
  )
}

const monthNames = [
  ...['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august'],
  ...['september', 'october', 'november', 'december'],
]

/** A day, a part of one, or a time of day. */
function isMoment(word: string): boolean {
  return /^[\d,:-]*\d[\d,:-]*$/.test(word) || (word.length > 2 && monthNames.some((name) => name.startsWith(word)))
}

/** That, a figure, the name of a figure with its number, or a unit: what is looked for in figures. */
function isFigure(word: string): boolean {
  return (
    isMoment(word) ||
    /^[\d.,:-]*\d[\d.,:-]*$|^[a-z]+ [\d.]+ $|^(gap|overlap|area|peak|strength|wood|failure|age|months?|years?|mm2?|in2?|n|lbf|mpa|psi|%)$/.test(
      word,
    )
  )
}
