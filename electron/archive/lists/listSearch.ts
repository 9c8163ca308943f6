import type { Flag, Outcome } from '#contract/breaks/evaluation.ts'
import { shearStrengthMPa } from '#domain/strength/strength.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { breakToFind, type ShownBreak } from '#words/breaks/shownInLists.ts'
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

/** Makes `row_fits` known to a connection. */
export function teachSearch(database: Database): void {
  if (taught.has(database)) return
  taught.add(database)
  const wanted = { json: '', words: [] as string[] }
  database.function('row_fits', (json: string, texts: string, shown: string): number => {
    if (wanted.json !== json) Object.assign(wanted, { json, words: JSON.parse(json) })
    let all: string | null = null
    const fits = (word: string) => {
      if (texts.includes(word)) return true
      all ??= `${texts} ${toFind(JSON.parse(shown))} `
      return all.includes(word)
    }
    return wanted.words.every(fits) ? 1 : 0
  })
}

function toFind(row: ShownRow): string {
  const [startedAt, outcome, ending, setAside, flags, events, peakN, areaMm2, woodFailurePercent, simulated] = row
  const [, , , , , , , , , , by, reason, lot, bondLineGapMm, overlapLengthMm, overlapWidthMm, gluedOn, demo] = row
  const specimen: FoundSpecimen = {
    ...{ lot: lot ?? '', bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn },
  }
  const parts = [specimenToFind(specimen), by ?? '', reason ?? '', setAside ?? '', demo === 1 ? 'invented demo' : '']
  if (startedAt === null) parts.push('waiting')
  else
    parts.push(
      breakToFind({
        ...{ startedAt, outcome, ending, setAside, peakN, woodFailurePercent, simulated: simulated === 1 },
        flags: flags === null ? [] : (JSON.parse(flags) as Flag[]),
        events: [...(events ?? '').matchAll(/"kind":"([a-z-]+)"/g)].map(([, kind]) => kind!),
        strengthMPa: strengthOf(outcome, peakN, areaMm2),
      }),
    )
  return folded(parts.join(' '))
}

function strengthOf(outcome: Outcome | null, peakN: number | null, areaMm2: number | null): number | null {
  if (outcome !== 'break' || peakN === null || areaMm2 === null || areaMm2 <= 0) return null
  return shearStrengthMPa(peakN, areaMm2)
}
