/** How many breaks count as results of the specimen whose number `specimenId` stands for, in SQL. */
export const resultsOf = (specimenId: string) =>
  `(SELECT count(*) FROM break_current WHERE specimen_id = ${specimenId} AND ${countsAsResult('break_current')})`

/** Whether the row `b` of break_current is a result, in SQL. */
export const countsAsResult = (b: string) => `(${b}.outcome = 'break' AND ${b}.set_aside IS NULL)`

/**
 * How often the specimen whose number `specimenId` stands for broke, in SQL: whatever a break was set aside for, the joint is
 * open; unless another block was in the press. A result without a curve counts until it is set aside: it may have been typed for
 * another block.
 */
export const timesBroken = (specimenId: string) =>
  `((SELECT count(*) FROM break_current
    WHERE specimen_id = ${specimenId} AND outcome = 'break' AND set_aside_cause IS NOT 'wrong-block')
    + (SELECT count(*) FROM typed_result t WHERE t.specimen_id = ${specimenId} AND NOT ${typedSetAside('t')}))`

/** Whether the row `t` of typed_result is set aside, in SQL: the newest word on it says so. */
export const typedSetAside = (t: string) =>
  `coalesce((SELECT kind FROM typed_result_decision WHERE typed_result_id = ${t}.typed_result_id
    ORDER BY typed_result_decision_id DESC LIMIT 1) = 'set-aside', 0)`
