import { timesBroken } from './countsOfSpecimen.ts'
import { isWithdrawn } from './withdrawn.ts'

/**
 * Whether the row `s` of specimen_current waits for the press, in SQL: it has no result, a break that was set aside did not open
 * its joint either, and nobody withdrew it.
 */
export const waitsForPress = (s: string) =>
  `(${s}.break_in_force IS NULL AND ${s}.typed_result_in_force IS NULL AND (${s}.any_set_aside = 0 OR ${timesBroken(`${s}.specimen_id`)} = 0)
    AND NOT ${isWithdrawn(`${s}.specimen_id`)})`
