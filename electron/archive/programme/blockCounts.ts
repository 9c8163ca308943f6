import type { BlockCounts, CellCounts } from '#contract/programme/studyRecord.ts'
import type { Allocated } from '#domain/programme/study/allocation.ts'
import { cellKey } from '#domain/programme/study/cells.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/** What became of blocks, as columns over specimens `s`, which may be missing. */
const countColumns = `count(s.specimen_id) AS glued, count(CASE WHEN s.standing = 'broken' THEN 1 END) AS broken,
  count(CASE WHEN s.standing = 'lost' THEN 1 END) AS lost`

type Counted = Omit<BlockCounts, 'waiting'>

const withWaiting = <Row extends Counted>(row: Row): Row & { waiting: number } => ({
  ...row,
  waiting: row.glued - row.broken - row.lost,
})

/** What became of the allocated blocks of every cell of a study, in the order in which they were planned. */
export function cellCounts(database: Database, studyId: number): CellCounts[] {
  return prepared<Omit<CellCounts, 'waiting'>>(
    database,
    `SELECT b.adhesive, b.joint_type AS jointType, b.gap_mm AS gapMm, b.exposure, b.age_months AS ageMonths,
       count(*) AS allocated, ${countColumns}
     FROM block b LEFT JOIN glued_block g ON g.block_id = b.block_id
     LEFT JOIN specimen_current s ON s.specimen_id = g.specimen_id WHERE b.study_id = ?
     GROUP BY b.adhesive, b.joint_type, b.gap_mm, b.exposure, b.age_months ORDER BY min(b.block_id)`,
  )
    .all(studyId)
    .map(withWaiting)
}

/** The same of whole studies, by their numbers; one without blocks is missing. */
export function countsOfStudies(database: Database): Map<number, BlockCounts> {
  const rows = prepared<Counted & { studyId: number }>(
    database,
    `SELECT b.studyId, b.allocated, coalesce(glued, 0) AS glued, coalesce(broken, 0) AS broken, coalesce(lost, 0) AS lost
     FROM (SELECT study_id AS studyId, count(*) AS allocated FROM block GROUP BY study_id) b
     LEFT JOIN (SELECT s.study_id AS studyId, ${countColumns} FROM specimen_current s
       WHERE s.study_id IS NOT NULL GROUP BY s.study_id) USING (studyId)`,
  ).all()
  return new Map(rows.map(({ studyId, ...counts }) => [studyId, withWaiting(counts)]))
}

export const noBlocks: BlockCounts = { allocated: 0, glued: 0, waiting: 0, broken: 0, lost: 0 }

/** All blocks of some cells. */
export function sumOf(cells: readonly BlockCounts[]): BlockCounts {
  const sum = { ...noBlocks }
  for (const cell of cells) for (const key of Object.keys(sum) as (keyof BlockCounts)[]) sum[key] += cell[key]
  return sum
}

/** How many blocks of a study are cut from each board, in the order of their first blocks; none for blocks without a board. */
export function boardCounts(database: Database, studyId: number): { board: string; blocks: number }[] {
  return prepared<{ board: string; blocks: number }>(
    database,
    `SELECT board, count(*) AS blocks FROM block WHERE study_id = ? AND board <> '' GROUP BY board ORDER BY min(block_id)`,
  ).all(studyId)
}

/** What is allocated of a study, as an extension must respect it. */
export function allocatedOf(database: Database, studyId: number): Allocated {
  const cells = cellCounts(database, studyId)
  return {
    cells: new Map(cells.map((cell) => [cellKey(cell), cell.allocated])),
    boards: new Map(boardCounts(database, studyId).map(({ board, blocks }) => [board, blocks])),
    blocks: cells.reduce((sum, { allocated }) => sum + allocated, 0),
  }
}
