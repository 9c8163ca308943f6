/** How many breaks count as results of the specimen whose number `specimenId` stands for, in SQL. */
export const resultsOf = (specimenId: string) =>
  `(SELECT count(*) FROM break_current WHERE specimen_id = ${specimenId} AND ${countsAsResult('break_current')})`

/** Whether the row `b` of break_current is a result, in SQL. */
export const countsAsResult = (b: string) => `(${b}.outcome = 'break' AND ${b}.set_aside IS NULL)`

/**
 * How often the specimen whose number `specimenId` stands for broke, in SQL: whatever a break was set aside for, the joint is
 * open; unless another block was in the press.
 */
export const timesBroken = (specimenId: string) =>
  `(SELECT count(*) FROM break_current
    WHERE specimen_id = ${specimenId} AND outcome = 'break' AND set_aside_cause IS NOT 'wrong-block')`
