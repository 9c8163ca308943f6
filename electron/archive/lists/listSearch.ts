import type { SetAsideCause } from '#contract/breaks/decision.ts'
import type { Flag, Outcome } from '#contract/breaks/evaluation.ts'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { setAsideCauseWords } from '#words/breaks/decisionWords.ts'
import { breakFiguresToFind, breakWordsToFind, everyBreakWord, type ShownBreak } from '#words/breaks/shownInLists.ts'
import { resultsWords } from '#words/specimens/resultsWords.ts'
import { type FoundSpecimen, specimenToFind } from '#words/specimens/specimenToFind.ts'
import type { Database } from '../core/database.ts'
import { countsAsResult } from './countsOfSpecimen.ts'

// A row is found by all that it shows, in the words in which it shows it. Those of a break are made while searching and never
// stored: they change with the program's wording and with the time zone.

/** Joins, of `b` (break_current, may be missing) and `s` (specimen_current, may be missing), that `rowFits` needs. */
export const searchJoins = `
  LEFT JOIN break_header h ON h.break_id = b.break_id
  LEFT JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_end x ON x.break_id = b.break_id
  LEFT JOIN evaluation e ON e.evaluation_id = b.evaluation_id
  LEFT JOIN decision p ON p.decision_id = b.peak_decision_id
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id`

/** A figure of the result that a row shows: of its break, or of the result without a curve of its specimen. */
const ofResult = (name: string) => `iif(b.break_id IS NULL, s.${name}, b.${name})`

/** What a row shows besides its texts, each with where it comes from in SQL. */
const shownColumns = {
  startedAt: ofResult('started_at'),
  outcome: "iif(b.break_id IS NULL AND s.typed_result_in_force IS NOT NULL, 'break', b.outcome)",
  ending: "iif(b.break_id IS NULL, 'complete', x.ending)",
  setAside: 'b.set_aside',
  setAsideCause: 'b.set_aside_cause',
  flags: 'e.flags',
  events: 'e.events',
  peakN: ofResult('peak_n'),
  areaMm2: 's.area_mm2',
  woodFailurePercent: ofResult('wood_failure_percent'),
  typedStrengthMPa: 'iif(b.break_id IS NULL, s.strength_mpa, NULL)',
  simulated: "c.source GLOB 'virtual amplifier: *'",
  results: `iif(b.break_id IS NULL OR ${countsAsResult('b')}, s.results, 0)`,
  by: 'p.by',
  reason: 'p.reason',
  bondLineGapMm: 's.gap_mm',
  overlapLengthMm: 'r.overlap_length_mm',
  overlapWidthMm: 'r.overlap_width_mm',
  gluedOn: 'r.glued_on',
  ageMonths: 's.age_months',
  demo: 's.demo',
} as const

type Shown = Record<'startedAt' | 'setAside' | 'flags' | 'events' | 'by' | 'reason' | 'gluedOn', string | null> &
  Record<
    | 'peakN'
    | 'areaMm2'
    | 'woodFailurePercent'
    | 'typedStrengthMPa'
    | 'simulated'
    | 'results'
    | 'bondLineGapMm'
    | 'overlapLengthMm'
    | 'overlapWidthMm'
    | 'ageMonths'
    | 'demo',
    number | null
  > & {
    outcome: Outcome | null
    ending: ShownBreak['ending']
    setAsideCause: SetAsideCause | null
  }
const shownKeys = Object.keys(shownColumns) as (keyof Shown)[]

function shownOf(row: readonly unknown[]): Shown {
  const shown: Record<string, unknown> = {}
  for (let at = 0; at < shownKeys.length; at++) shown[shownKeys[at]!] = row[at]
  return shown as Shown
}

/** A condition in SQL with one place for what is looked for, as JSON: each of it occurs in the texts or in what the row shows. */
export const rowFits = `row_fits(?, coalesce(s.search, '') || ' ' || coalesce(b.note_search, ''),
  ${Object.values(shownColumns).join(', ')})`

/** A condition with the values for its places. */
export type SearchCondition = {
  condition: string
  values: (string | number)[]
  /** The stored texts of nearly every row decide, so that looking twice costs less than keeping all that fit. */
  quick: boolean
}

/**
 * A condition on the rows of a list: each word occurs in its stored texts, or in what else it shows. `s` is specimen_current, and
 * `b` break_current where it is a list of breaks. What a row shows besides is looked at only where it can hold the word.
 */
export function searchCondition(words: readonly string[], list: 'specimens' | 'breaks'): SearchCondition {
  const values: string[] = []
  const each = words.map((word) => {
    const json = JSON.stringify([word])
    const shows = maybeShown(word)
    values.push(word)
    if (list === 'breaks') {
      values.push(word, json)
      return `(instr(s.search, ?) > 0 OR instr(b.note_search, ?) > 0
        OR (${shows ? '1' : saidBesides} AND (SELECT ${rowFits} FROM (SELECT 1) ${searchJoins})))`
    }
    if (!shows) values.push(word)
    values.push(json)
    const ofBreak = `EXISTS (SELECT 1 FROM break_current b
      WHERE b.break_id = s.break_in_force AND (${saidBesides} OR instr(b.note_search, ?) > 0))`
    return `(instr(s.search, ?) > 0 OR (${shows ? '1' : ofBreak}
      AND (SELECT ${rowFits} FROM (SELECT 1) LEFT JOIN break_current b ON b.break_id = s.break_in_force ${searchJoins})))`
  })
  return { condition: each.map((one) => `AND ${one}`).join(' '), values, quick: !words.some(maybeShown) }
}

/** A person said something of the break that stands in no stored text of the lists. */
const saidBesides = '(b.set_aside IS NOT NULL OR b.peak_decision_id IS NOT NULL)'

/** All words that rows show beside their texts and figures, whatever they are. */
const wordsShown = folded(
  `invented demo tight joint waiting none ${resultsWords(2)} ${Object.values(setAsideCauseWords).join(' ')} ${everyBreakWord()}`,
)

/** Whether a row may show a word beside its stored texts, and what people said of its break. */
function maybeShown(word: string): boolean {
  return isFigure(word) || wordsShown.includes(word)
}

const taught = new WeakSet<Database>()

/** Made words and figures are kept for the next row, the next letter and the next page, so many of each. */
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

/** Makes `row_fits` known to a connection. */
export function teachSearch(database: Database): void {
  if (taught.has(database)) return
  taught.add(database)
  const wanted = { json: '', words: [] as string[] }
  const textOf = kept(folded)
  // What a break shows follows from a few codes, so that few rows need words of their own.
  const breakWords = kept((codes) => folded(breakWordsToFind(JSON.parse(codes))))
  const figures = kept((key) => figuresToFind(JSON.parse(key)))
  function showsWord(shown: Shown, word: string): boolean {
    const { by, reason, setAside, setAsideCause, startedAt, demo, results } = shown
    for (const text of [by, reason, setAside])
      if (text !== null && text !== '' && textOf(text).includes(word)) return true
    if (demo === 1 && 'invented demo'.includes(word)) return true
    if (demo === null && word === 'none') return true
    if (shown.bondLineGapMm === 0 && 'tight joint'.includes(word)) return true
    if (results !== null && (resultsWords(results) ?? '').includes(word)) return true
    if (setAsideCause !== null && setAsideCauseWords[setAsideCause].includes(word)) return true
    if (startedAt === null) return 'waiting'.includes(word)
    return breakWords(codesOf(shown)).includes(word)
  }
  database.function('row_fits', { varargs: true }, (json: string, texts: string, ...row: unknown[]): number => {
    if (wanted.json !== json) Object.assign(wanted, { json, words: JSON.parse(json) })
    let shown: Shown | null = null
    const fits = (word: string) => {
      if (`${texts} `.includes(word)) return true
      shown ??= shownOf(row)
      return (isFigure(word) && figures(figureKey(shown)).includes(word)) || showsWord(shown, word)
    }
    return wanted.words.every(fits) ? 1 : 0
  })
}

/** What the words of a break follow from, as JSON of what they are made from. */
function codesOf({ outcome, ending, setAside, flags, events, simulated }: Shown): string {
  const kinds = [...(events ?? '').matchAll(/"kind":"([a-z-]+)"/g)].map(([, kind]) => kind!)
  const codes: Partial<ShownBreak> = {
    ...{ outcome, ending, setAside: setAside === null ? null : '', simulated: simulated === 1 },
    flags: flags === null ? [] : (JSON.parse(flags) as Flag[]),
    events: [...new Set(kinds)],
  }
  return JSON.stringify(codes)
}

const monthNames = [
  ...['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august'],
  ...['september', 'october', 'november', 'december'],
]

/** A figure, a day, the name of a figure with its number, a month or a unit: what is made only where it is looked for. */
function isFigure(word: string): boolean {
  return (
    /^[\d.,:-]*\d[\d.,:-]*$|^[a-z]+ [\d.]+ $|^(gap|overlap|area|peak|strength|wood|failure|age|months?|years?|mm2?|in2?|n|lbf|mpa|psi|%)$/.test(
      word,
    ) ||
    (word.length > 2 && monthNames.some((name) => name.startsWith(word)))
  )
}

type Figures = FoundSpecimen & Pick<ShownBreak, 'startedAt' | 'peakN' | 'strengthMPa' | 'woodFailurePercent'>

/** All figures of a row, as JSON. */
function figureKey(shown: Shown): string {
  const { startedAt, peakN, areaMm2, woodFailurePercent, bondLineGapMm, overlapLengthMm, overlapWidthMm } = shown
  const { gluedOn, ageMonths } = shown
  const figures: Figures = {
    ...{ startedAt: startedAt ?? '', peakN, woodFailurePercent, areaMm2 },
    ...{ bondLineGapMm, overlapLengthMm, overlapWidthMm, gluedOn, ageMonths },
    strengthMPa: shown.typedStrengthMPa ?? strengthOf(shown),
  }
  return JSON.stringify(figures)
}

function figuresToFind(figures: Figures): string {
  const ofBreak = figures.startedAt === '' ? '' : breakFiguresToFind(figures)
  return `${folded(`${specimenToFind(figures)} ${ofBreak}`)} `
}

function strengthOf({ outcome, peakN, areaMm2 }: Shown): number | null {
  if (outcome !== 'break' || peakN === null || areaMm2 === null || areaMm2 <= 0) return null
  return shearStrengthMPa(peakN, areaMm2)
}
