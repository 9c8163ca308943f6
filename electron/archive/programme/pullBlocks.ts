// Held by tests/archive/programme/pulls.spec.ts.
import type { PullName } from '#contract/programme/pull.ts'
import type { PullGroup } from '#contract/programme/pullProcedures.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { specimensOfPulls } from './orderToBreak.ts'

const waitingText = `
  SELECT ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive, ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType,
    r.bond_line_gap_mm AS gapMm, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure,
    ${nameInForce('s.place_id', 'r.place')} AS place, count(*) AS blocks
  FROM json_each(?) JOIN specimen_current s ON s.specimen_id = value JOIN specimen_revision r ON r.revision_id = s.revision_id
  GROUP BY 1, 2, 3, 4, 5 ORDER BY min(s.specimen_id)`

const ungluedText = `
  SELECT adhesive, joint_type AS jointType, gap_mm AS gapMm, exposure, '' AS place, count(*) AS blocks
  FROM block p WHERE study_id = ? AND age_months = ?
    AND NOT EXISTS (SELECT 1 FROM glued_block b WHERE b.block_id = p.block_id)
  GROUP BY 1, 2, 3, 4 ORDER BY min(p.block_id)`

/**
 * The blocks that each of some pulls takes from the shelf, by what they are and where they lie, in the order in which they were
 * planned; before a pull has a day of glue-up, the planned ones.
 */
export function pullBlocks(database: Database, pulls: readonly PullName[]): PullGroup[][] {
  const waiting = specimensOfPulls(database, pulls)
  return pulls.map(({ studyId, gluedOn, ageMonths }, at) =>
    gluedOn === null
      ? prepared<PullGroup>(database, ungluedText).all(studyId, ageMonths)
      : prepared<PullGroup>(database, waitingText).all(JSON.stringify(waiting[at])),
  )
}
