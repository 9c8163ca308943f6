import type { FoundNumber, NumberedSpecimen } from '#contract/programme/labelProcedures.ts'
import { runningOf } from '#domain/programme/labels/label.ts'
import { nearestLabels } from '#domain/programme/labels/nearestLabels.ts'
import { caseFolded, folded, naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { timesBroken } from '../lists/countsOfSpecimen.ts'
import { labelledBlocks } from './labels.ts'

/** More near numbers than this help nobody to find the one that was meant. */
const mostNearest = 8

/**
 * What a number that was typed or scanned stands for: a specimen by the number it has, whoever gave it; a block that is planned;
 * else the numbers one slip away that there are.
 */
export function findNumber(database: Database, typed: string): FoundNumber {
  const digits = typed.replace(/\s/gu, '')
  const label = /^\d+$/.test(digits) ? digits : typed
  return (
    specimenNumbered(database, typed) ??
    specimenNumbered(database, label) ??
    labelFound(database, label) ?? {
      kind: 'none',
      wrongCheck: /^\d+$/.test(label) && runningOf(label) === null,
      nearest: nearestLabels(label)
        .filter((near) => specimenNumbered(database, near) !== null || labelFound(database, near) !== null)
        .slice(0, mostNearest),
    }
  )
}

/** What each of some numbers stands for, with what is asked of a specimen before a result is typed for it. */
export function numberedSpecimens(database: Database, numbers: readonly string[]): NumberedSpecimen[] {
  const asked = prepared<{ areaMm2: number | null; timesBroken: number }>(
    database,
    `SELECT s.area_mm2 AS areaMm2, ${timesBroken('s.specimen_id')} AS timesBroken
     FROM specimen_current s WHERE s.specimen_id = ?`,
  )
  return numbers.map((number) => {
    const found = findNumber(database, number)
    return { number, found, ...((found.kind === 'specimen' && asked.get(found.specimenId)) || noSpecimen) }
  })
}

const noSpecimen = { areaMm2: null, timesBroken: 0 }

function specimenNumbered(database: Database, number: string): FoundNumber | null {
  const found = prepared<{ specimenId: number; number: string }>(
    database,
    `SELECT s.specimen_id AS specimenId, r.number
     FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
     WHERE s.number_folded = ? OR s.number_key = ?`,
  )
    .all(caseFolded(number), naturalKey(number))
    .find((one) => folded(one.number) === folded(number))
  return found === undefined ? null : { kind: 'specimen', ...found }
}

function labelFound(database: Database, label: string): FoundNumber | null {
  const running = runningOf(label)
  if (running === null) return null
  const made = prepared<{ specimenId: number; number: string }>(
    database,
    `SELECT s.specimen_id AS specimenId, r.number
     FROM (SELECT g.specimen_id FROM block p JOIN glued_block g ON g.block_id = p.block_id WHERE p.running = @running
       UNION ALL SELECT specimen_id FROM label WHERE running = @running) found
     JOIN specimen_current s ON s.specimen_id = found.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id`,
  ).get({ running })
  if (made !== undefined) return { kind: 'specimen', ...made }
  const planned = prepared<{ studyId: number; studyTitle: string }>(
    database,
    `SELECT p.study_id AS studyId, (SELECT json_extract(fields, '$.title') FROM study_revision r
       WHERE r.study_id = p.study_id ORDER BY revision DESC LIMIT 1) AS studyTitle
     FROM block p WHERE p.running = ?`,
  ).get(running)
  if (planned === undefined) return null
  const [block] = labelledBlocks(database, { kind: 'numbers', first: running, last: running })
  return { kind: 'planned', number: label, ...planned, block: block! }
}
