import type { Flag, Outcome } from '#contract/breaks/evaluation.ts'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { breakFiguresToFind, breakWordsToFind, type ShownBreak } from '#words/breaks/shownInLists.ts'
import { type FoundSpecimen, specimenToFind } from '#words/specimens/specimenToFind.ts'
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
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id`

/** A condition in SQL with one place for what is looked for, as JSON: each of it occurs in the texts or in what the row shows. */
export const rowFits = `row_fits(?, coalesce(s.search, '') || ' ' || coalesce(b.note_search, ''), json_array(
  b.started_at, b.outcome, x.ending, b.set_aside, e.flags, e.events, b.peak_n, s.area_mm2, b.wood_failure_percent,
  c.source GLOB 'virtual amplifier: *', p.by, p.reason,
  r.lot, r.bond_line_gap_mm, r.overlap_length_mm, r.overlap_width_mm, r.glued_on, s.demo))`

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
]

const taught = new WeakSet<Database>()

/** Made figures are kept for the next letter and the next page, of so many rows. */
const mostKept = 20_000

/** Makes `row_fits` known to a connection. */
export function teachSearch(database: Database): void {
  if (taught.has(database)) return
  taught.add(database)
  const wanted = { json: '', words: [] as string[] }
  const figures = new Map<string, string>()
  const figuresOf = (shown: string) => {
    const known = figures.get(shown)
    if (known !== undefined) return known
    if (figures.size >= mostKept) figures.clear()
    const made = figuresToFind(JSON.parse(shown))
    figures.set(shown, made)
    return made
  }
  database.function('row_fits', (json: string, texts: string, shown: string): number => {
    if (wanted.json !== json) Object.assign(wanted, { json, words: JSON.parse(json) })
    let words: string | null = null
    const fits = (word: string) => {
      if (`${texts} `.includes(word)) return true
      if (isFigure.test(word) && figuresOf(shown).includes(word)) return true
      words ??= wordsToFind(JSON.parse(shown))
      return words.includes(word)
    }
    return wanted.words.every(fits) ? 1 : 0
  })
}

/** A figure, a day, the name of a figure with its number, a month or a unit: what is made only where it is looked for. */
const isFigure =
  /^[\d.,:-]*\d[\d.,:-]*$|^[a-z]+ [\d.]+ $|^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|gap|overlap|area|peak|strength|wood|failure|mm2?|in2?|n|lbf|mpa|psi|%)$/

function wordsToFind(row: ShownRow): string {
  const [startedAt, , , setAside, , , , , , , by, reason, lot, bondLineGapMm, , , , demo] = row
  const parts = [by ?? '', reason ?? '', setAside ?? '', lot ?? '', demo === 1 ? 'invented demo' : '']
  if (bondLineGapMm === 0) parts.push('tight joint')
  parts.push(startedAt === null ? 'waiting' : breakWordsToFind(breakOf(row, startedAt)))
  return folded(parts.join(' '))
}

function figuresToFind(row: ShownRow): string {
  const [startedAt, , , , , , , areaMm2, , , , , , bondLineGapMm, overlapLengthMm, overlapWidthMm, gluedOn] = row
  const specimen: FoundSpecimen = { bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn }
  const parts = [specimenToFind(specimen), startedAt === null ? '' : breakFiguresToFind(breakOf(row, startedAt))]
  return `${folded(parts.join(' '))} `
}

function breakOf(row: ShownRow, startedAt: string): ShownBreak {
  const [, outcome, ending, setAside, flags, events, peakN, areaMm2, woodFailurePercent, simulated] = row
  return {
    ...{ startedAt, outcome, ending, setAside, peakN, woodFailurePercent, simulated: simulated === 1 },
    flags: flags === null ? [] : (JSON.parse(flags) as Flag[]),
    events: [...(events ?? '').matchAll(/"kind":"([a-z-]+)"/g)].map(([, kind]) => kind!),
    strengthMPa: strengthOf(outcome, peakN, areaMm2),
  }
}

function strengthOf(outcome: Outcome | null, peakN: number | null, areaMm2: number | null): number | null {
  if (outcome !== 'break' || peakN === null || areaMm2 === null || areaMm2 <= 0) return null
  return shearStrengthMPa(peakN, areaMm2)
}
