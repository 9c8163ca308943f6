// Held by tests/archive/lists/refresh.spec.ts.
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { overruledPeak } from '#domain/strength/overruledPeak.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { standingText } from './inForce.ts'

/** What stands in force of one break, so that a list needs no search through the history. Follows from the records alone. */
export type BreakCurrentRow = {
  break_id: number
  started_at: string
  specimen_id: number | null
  evaluation_id: number | null
  assessment_id: number | null
  set_aside: string | null
  outcome: string | null
  peak_n: number | null
  wood_failure_percent: number | null
  /** All that people said of it. */
  note_search: string
  set_aside_cause: string | null
  /** The decision whose sample stands for the peak; null: the peak is left as it is. */
  peak_decision_id: number | null
}

type FoundRow = Omit<BreakCurrentRow, 'note_search' | 'peak_decision_id'> & {
  note: string | null
  peak_word_id: number | null
  peak_by: string | null
  peak_reason: string | null
  sample_reading: number | null
  reading_unit: ReadingUnit
  scale: string | null
  tare_offset: number | null
}

const newest = (kinds: string) =>
  `(SELECT max(decision_id) FROM decision WHERE break_id = h.break_id AND kind IN (${kinds}))`

const text = `
  SELECT h.break_id, h.started_at,
    CASE WHEN m.decision_id IS NULL THEN h.specimen_id ELSE m.specimen_id END AS specimen_id,
    e.evaluation_id, a.assessment_id, e.outcome, e.peak_n, a.wood_failure_percent, a.note,
    CASE w.kind WHEN 'set-aside' THEN w.reason END AS set_aside,
    CASE w.kind WHEN 'set-aside' THEN w.cause END AS set_aside_cause,
    p.decision_id AS peak_word_id, p.by AS peak_by, p.reason AS peak_reason, p.sample_reading, h.reading_unit,
    CASE WHEN p.sample_reading IS NOT NULL THEN e.scale END AS scale, e.tare_offset
  FROM break_header h
  LEFT JOIN evaluation e ON e.evaluation_id = (${standingText('h.break_id')} LIMIT 1)
  LEFT JOIN assessment a ON a.assessment_id = (SELECT max(assessment_id) FROM assessment WHERE break_id = h.break_id)
  LEFT JOIN decision m ON m.decision_id = ${newest("'reassigned'")}
  LEFT JOIN decision w ON w.decision_id = ${newest("'set-aside', 'taken-back'")}
  LEFT JOIN decision p ON p.decision_id = ${newest("'peak-picked', 'premature-failure', 'peak-as-found'")}
  WHERE h.break_id IN (SELECT value FROM json_each(?))
  ORDER BY h.break_id`

/** What the records say of each of some breaks now, in the order of their numbers; a number without a break gives no row. */
export function deriveBreaks(database: Database, breakIds: readonly number[]): BreakCurrentRow[] {
  return prepared<FoundRow>(database, text).all(JSON.stringify(breakIds)).map(fromRow)
}

function fromRow(row: FoundRow): BreakCurrentRow {
  const { note, peak_word_id, peak_by, peak_reason, sample_reading, reading_unit, scale, tare_offset, ...found } = row
  const result = scale === null ? null : { scale: JSON.parse(scale), tareOffset: tare_offset ?? 0 }
  const overruled = overruledPeak(sample_reading, result, reading_unit)
  const said = [note, found.set_aside, ...(overruled === null ? [] : [peak_by, peak_reason])]
  return {
    ...found,
    ...(overruled === null ? {} : { outcome: 'break', peak_n: overruled.peakN }),
    note_search: said.map((text) => folded(text ?? '')).join('\n'),
    peak_decision_id: overruled === null ? null : peak_word_id,
  }
}
