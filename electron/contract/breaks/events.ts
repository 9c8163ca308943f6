import { breakSummary } from './break.ts'

/** What is said of breaks unasked. */
export const breakEvents = {
  /** A capture ended and is stored. */
  'break.finished': breakSummary,
}
