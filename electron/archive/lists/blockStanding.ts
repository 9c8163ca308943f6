import { waitsForPress } from './waits.ts'

/** Whether the row `s` of specimen_current has a result, of a break or a typed one that nobody set aside, in SQL. */
const hasResult = `(s.break_in_force IS NOT NULL OR EXISTS (SELECT 1 FROM typed_result t WHERE t.specimen_id = s.specimen_id
  AND coalesce((SELECT d.kind FROM typed_result_decision d WHERE d.typed_result_id = t.typed_result_id
    ORDER BY d.typed_result_decision_id DESC LIMIT 1), '') <> 'set-aside'))`

/**
 * What became of the glued block that is the row `s` of specimen_current, in SQL: `waiting`, `broken`, or `lost`, which is
 * withdrawn, or open although nothing of it counts. NULL where there is no such row.
 */
export const blockStanding = `CASE WHEN s.specimen_id IS NULL THEN NULL WHEN ${hasResult} THEN 'broken'
  WHEN ${waitsForPress('s')} THEN 'waiting' ELSE 'lost' END`
