// Held by tests/archive/lists/lists.spec.ts.
import { type BlockOfBreak, type BreakRow, breakRow } from '#contract/breaks/break.ts'
import { entryNameReader } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { ageAtTest } from './deriveSpecimens.ts'
import { type ReadableRows, readableRows } from './readableRows.ts'
import { studyTitles } from './studyTitles.ts'
import { breakSummaries } from './summaries.ts'

type Named = 'lot' | 'wood' | 'board' | 'place'
type BlockRow = Record<Named, string | null> &
  Record<`${Named}_id`, number | null> & {
    break_id: number
    started_at: string
    study_id: number | null
    gap_mm: number | null
    glued_on: string | null
  }

const someBlocks = `
  SELECT b.break_id, b.started_at, s.study_id, s.gap_mm, r.glued_on,
    r.lot, s.lot_id, r.wood, s.wood_id, r.board, s.board_id, r.place, s.place_id
  FROM break_current b JOIN specimen_current s ON s.specimen_id = b.specimen_id
  JOIN specimen_revision r ON r.revision_id = s.revision_id
  WHERE b.break_id IN (SELECT value FROM json_each(?))`

/** What is known of the blocks of some breaks, by the numbers of the breaks. */
function blocksOf(database: Database, breakIds: readonly number[]): ReadonlyMap<number, BlockOfBreak> {
  const readName = entryNameReader(database)
  const titles = studyTitles(database)
  const rows = prepared<BlockRow>(database, someBlocks).all(JSON.stringify(breakIds))
  return new Map(
    rows.map((row) => {
      const named = (key: Named) => readName(row[`${key}_id`]) ?? row[key] ?? ''
      const { gap_mm: bondLineGapMm, glued_on: gluedOn } = row
      return [
        row.break_id,
        {
          ...{ lot: named('lot'), wood: named('wood'), board: named('board'), place: named('place') },
          ...{ bondLineGapMm, gluedOn, ageMonths: ageAtTest(gluedOn, row.started_at) },
          study: titles.get(row.study_id) ?? null,
        },
      ]
    }),
  )
}

/** Some breaks as the list of breaks shows them. */
export function readableBreakRows(database: Database, breakIds: readonly number[]): ReadableRows<BreakRow> {
  const read = breakSummaries(database, breakIds)
  const blocks = blocksOf(database, breakIds)
  return readableRows('break', breakIds, (breakId) =>
    breakRow.parse({ ...read(breakId).summary, block: blocks.get(breakId) ?? null }),
  )
}
