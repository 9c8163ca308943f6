/** How many breaks count as results of the specimen whose number `specimenId` stands for, in SQL. */
export const resultsOf = (specimenId: string) =>
  `(SELECT count(*) FROM break_current WHERE specimen_id = ${specimenId} AND ${countsAsResult('break_current')})`

/** Whether the row `b` of break_current is a result, in SQL. */
export const countsAsResult = (b: string) => `(${b}.outcome = 'break' AND ${b}.set_aside IS NULL)`

/**
 * How often the specimen whose number `specimenId` stands for broke, in SQL: whatever a break or a result without a curve was set
 * aside for, the joint is open; unless it was of another block. Of a block that an import brought with it no more is known than
 * that file says, so that it is on no shelf either when the file was the wrong one.
 */
export const timesBroken = (specimenId: string) =>
  `((SELECT count(*) FROM break_current
    WHERE specimen_id = ${specimenId} AND outcome = 'break' AND set_aside_cause IS NOT 'wrong-block')
    + (SELECT count(*) FROM typed_result t WHERE t.specimen_id = ${specimenId}
       AND (coalesce(${newestTypedWord('t', 'cause')}, '') <> 'wrong-block' OR ${broughtByImport('t')})))`

/** A column of the newest word on the row `t` of typed_result, in SQL; NULL: there is none. */
export const newestTypedWord = (t: string, column: string) =>
  `(SELECT ${column} FROM typed_result_decision WHERE typed_result_id = ${t}.typed_result_id
    ORDER BY typed_result_decision_id DESC LIMIT 1)`

/** Whether the block of the row `t` of typed_result was entered with the import that the row comes from, in SQL. */
const broughtByImport = (t: string) =>
  `(${t}.source = 'import' AND (SELECT l.seq FROM ledger l JOIN specimen_revision first ON first.revision_id = l.record_id
      WHERE l.kind = 'specimen' AND first.specimen_id = ${t}.specimen_id AND first.revision = 1)
    > (SELECT seq FROM ledger WHERE kind = 'import-run' AND record_id = ${t}.import_run_id))`

/** Whether the row `t` of typed_result is set aside, in SQL: the newest word on it says so. */
export const typedSetAside = (t: string) => `coalesce(${newestTypedWord(t, 'kind')} = 'set-aside', 0)`
