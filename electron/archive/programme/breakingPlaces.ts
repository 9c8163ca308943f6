// Held by tests/archive/programme/breakingSessions.spec.ts.
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import type { BreakingMember } from '#contract/programme/breakingProcedures.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { waitsForPress } from '../lists/waits.ts'
import { gluedBlocks } from './orderToBreak.ts'

type PlaceInStudy = Pick<BreakingMember, 'studyId' | 'ageMonths' | 'spares'>

/** Where a specimen stands in its study, and how many spares of its series wait on the shelf; nothing for one of no study. */
export function placeInStudy(database: Database, specimenId: number): PlaceInStudy {
  const place = prepared<PlaceInStudy>(
    database,
    `SELECT p.study_id AS studyId, p.age_months AS ageMonths,
       (SELECT count(*) FROM ${gluedBlocks.replace(/\bp\b/g, 'spare')}
        WHERE spare.study_id = p.study_id AND spare.age_months IS NULL AND spare.adhesive = p.adhesive
          AND spare.joint_type = p.joint_type AND spare.gap_mm = p.gap_mm AND spare.exposure = p.exposure
          AND s.specimen_id <> o.specimen_id AND ${waitsForPress('s')}) AS spares
     FROM glued_block o JOIN block p ON p.block_id = o.block_id WHERE o.specimen_id = ?`,
  ).get(specimenId)
  return place ?? { studyId: null, ageMonths: null, spares: 0 }
}

/** What happened on the curve of a break, by its result in force. */
export function eventsOf(database: Database, breakId: number): BreakingMember['breaks'][number]['events'] {
  const found = prepared<{ events: string }>(
    database,
    `SELECT e.events FROM break_current b JOIN evaluation e ON e.evaluation_id = b.evaluation_id WHERE b.break_id = ?`,
  ).get(breakId)
  const events: CurveEvent[] = found === undefined ? [] : JSON.parse(found.events)
  return events.map(({ kind, percentOfPeak = null }) => ({ kind, percentOfPeak }))
}
