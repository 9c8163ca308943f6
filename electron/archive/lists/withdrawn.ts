/** Why it was withdrawn, in SQL; NULL: it was not, or was taken back. */
export const withdrawnBecause = (specimenId: string) =>
  `(SELECT CASE kind WHEN 'withdrawn' THEN reason END FROM withdrawal WHERE specimen_id = ${specimenId}
    ORDER BY withdrawal_id DESC LIMIT 1)`

/** Whether the specimen whose number `specimenId` stands for was withdrawn and not taken back, in SQL. */
export const isWithdrawn = (specimenId: string) =>
  `coalesce((SELECT kind FROM withdrawal WHERE specimen_id = ${specimenId} ORDER BY withdrawal_id DESC LIMIT 1) = 'withdrawn', 0)`
