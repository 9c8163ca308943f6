/** Whether the row `s` of specimen_current waits for the press, in SQL; the first two conditions are those of its index. */
export const waitsForPress = (s: string) =>
  `(${s}.break_in_force IS NULL AND ${s}.typed_result_in_force IS NULL AND ${s}.standing = 'waiting')`
