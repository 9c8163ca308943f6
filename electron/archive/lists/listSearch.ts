import type { Flag, Outcome } from '#contract/breaks/evaluation.ts'
import type { TypedResult } from '#contract/specimens/typedResult.ts'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { breakFiguresToFind, breakWordsToFind, everyBreakWord, type ShownBreak } from '#words/breaks/shownInLists.ts'
import { type FoundSpecimen, specimenToFind } from '#words/specimens/specimenToFind.ts'
import { typedSourceToFind } from '#words/specimens/typedResultWords.ts'
import type { Database } from '../core/database.ts'

// A row is found by all that it shows, in the words in which it shows it. These are made while searching and never stored: they
// change with the program's wording and with the time zone.

/** Joins, of `b` (break_current, may be missing) and `s` (specimen_current, may be missing), that `rowFits` needs. */
export const searchJoins = `
  LEFT JOIN break_header h ON h.break_id = b.break_id
  LEFT JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_end x ON x.break_id = b.break_id
  LEFT JOIN evaluation e ON e.evaluation_id = b.evaluation_id
  LEFT JOIN decision p ON p.decision_id = b.peak_decision_id
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id
  LEFT JOIN typed_result t ON b.break_id IS NULL AND t.typed_result_id = s.typed_result_in_force
  LEFT JOIN import_run i ON i.import_run_id = t.import_run_id`

/** A condition in SQL with one place for what is looked for, as JSON: each of it occurs in the texts or in what the row shows. */
export const rowFits = `row_fits(?, coalesce(s.search, '') || ' ' || coalesce(b.note_search, ''),
  iif(t.typed_result_id IS NULL, b.started_at, s.started_at), iif(t.typed_result_id IS NULL, b.outcome, 'break'), x.ending,
  b.set_aside, e.flags, e.events, iif(t.typed_result_id IS NULL, b.peak_n, s.peak_n), s.area_mm2,
  iif(t.typed_result_id IS NULL, b.wood_failure_percent, s.wood_failure_percent),
  c.source GLOB 'virtual amplifier: *', p.by, p.reason,
  r.lot, r.bond_line_gap_mm, r.overlap_length_mm, r.overlap_width_mm, r.glued_on, s.demo,
  t.source, i.file_name, t.note, iif(t.typed_result_id IS NULL, NULL, s.strength_mpa))`

/** A condition with the values for its places. */
export type SearchCondition = {
  condition: string
  values: string[]
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
    return `(instr(s.search, ?) > 0 OR (${shows ? '1' : `(s.typed_result_in_force IS NOT NULL OR ${ofBreak})`}
      AND (SELECT ${rowFits} FROM (SELECT 1) LEFT JOIN break_current b ON b.break_id = s.break_in_force ${searchJoins})))`
  })
  return { condition: each.map((one) => `AND ${one}`).join(' '), values, quick: !words.some(maybeShown) }
}

/** A person said something of the break that stands in no stored text of the lists. */
const saidBesides = '(b.set_aside IS NOT NULL OR b.peak_decision_id IS NOT NULL)'

/** All words that rows show beside their texts and figures, whatever they are. */
const wordsShown = folded(`invented demo tight joint waiting ${everyBreakWord()}`)

/** Whether a row may show a word beside its stored texts, and what people said of its break. */
function maybeShown(word: string): boolean {
  return isFigure.test(word) || wordsShown.includes(word)
}

type ShownRow = [
  startedAt: string | null,
  outcome: Outcome | null,
  ending: ShownBreak['ending'],
  setAside: string | null,
  flags: string | null,
  events: string | null,
  peakN: number | null,
  areaMm2: number | null,
  woodFailurePercent: number | null,
  simulated: number | null,
  by: string | null,
  reason: string | null,
  lot: string | null,
  bondLineGapMm: number | null,
  overlapLengthMm: number | null,
  overlapWidthMm: number | null,
  gluedOn: string | null,
  demo: number | null,
  source: TypedResult['source'] | null,
  fileName: string | null,
  typedNote: string | null,
  typedStrengthMPa: number | null,
]

const taught = new WeakSet<Database>()

/** Made words and figures are kept for the next row, the next letter and the next page, so many of each. */
const mostKept = 20_000

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
  const breakWords = kept((codes) => folded(breakWordsToFind(breakOf(JSON.parse(codes)))))
  const figures = kept((row) => figuresToFind(JSON.parse(row)))
  function showsWord(row: ShownRow, word: string): boolean {
    const [startedAt, outcome, ending, setAside, flags, events, , , , simulated, by, reason, lot, gapMm, , , , demo] =
      row
    const [, , , , , , , , , , , , , , , , , , source, fileName, typedNote] = row
    const typed = source === null ? null : typedSourceToFind({ source, fileName })
    for (const text of [by, reason, setAside, lot, typed, typedNote])
      if (text !== null && text !== '' && textOf(text).includes(word)) return true
    if (demo === 1 && 'invented demo'.includes(word)) return true
    if (gapMm === 0 && 'tight joint'.includes(word)) return true
    if (startedAt === null) return 'waiting'.includes(word)
    const codes: Partial<ShownRow> = [
      '',
      outcome,
      ending,
      setAside === null ? null : '',
      flags,
      kindsOf(events),
      null,
      null,
      null,
      simulated,
    ]
    return breakWords(JSON.stringify(codes)).includes(word)
  }
  database.function('row_fits', { varargs: true }, (json: string, texts: string, ...row: unknown[]): number => {
    if (wanted.json !== json) Object.assign(wanted, { json, words: JSON.parse(json) })
    const fits = (word: string) =>
      `${texts} `.includes(word) ||
      (isFigure.test(word) && figures(JSON.stringify(row)).includes(word)) ||
      showsWord(row as ShownRow, word)
    return wanted.words.every(fits) ? 1 : 0
  })
}

/** The kinds among stored events, without what else is known of them. */
function kindsOf(events: string | null): string | null {
  return events === null || events === '[]' ? null : [...new Set(events.match(/"kind":"[a-z-]+"/g))].join('')
}

/** A figure, a day, the name of a figure with its number, a month or a unit: what is made only where it is looked for. */
const isFigure =
  /^[\d.,:-]*\d[\d.,:-]*$|^[a-z]+ [\d.]+ $|^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|gap|overlap|area|peak|strength|wood|failure|mm2?|in2?|n|lbf|mpa|psi|%)$/

function figuresToFind(row: ShownRow): string {
  const [startedAt, , , , , , , areaMm2, , , , , , bondLineGapMm, overlapLengthMm, overlapWidthMm, gluedOn] = row
  const specimen: FoundSpecimen = { bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn }
  const parts = [specimenToFind(specimen), startedAt === null ? '' : breakFiguresToFind(breakOf(row))]
  return `${folded(parts.join(' '))} `
}

function breakOf(row: ShownRow): ShownBreak {
  const [startedAt, outcome, ending, setAside, flags, events, peakN, areaMm2, woodFailurePercent, simulated] = row
  return {
    ...{ startedAt: startedAt ?? '', outcome, ending, setAside, peakN, woodFailurePercent, simulated: simulated === 1 },
    flags: flags === null ? [] : (JSON.parse(flags) as Flag[]),
    events: [...(events ?? '').matchAll(/"kind":"([a-z-]+)"/g)].map(([, kind]) => kind!),
    strengthMPa: row[21] ?? strengthOf(outcome, peakN, areaMm2),
  }
}

function strengthOf(outcome: Outcome | null, peakN: number | null, areaMm2: number | null): number | null {
  if (outcome !== 'break' || peakN === null || areaMm2 === null || areaMm2 <= 0) return null
  return shearStrengthMPa(peakN, areaMm2)
}
