import type { TroubleMessage } from '#contract/errors.ts'
import type { UnreadableRecord } from '#contract/keeping/unreadable.ts'
import { countOf } from '../units/counts.ts'

/** What is said above a list that had to leave records out; null: it shows all. */
export function unreadableTrouble(records: readonly UnreadableRecord[] | undefined): TroubleMessage | null {
  if (records === undefined || records.length === 0) return null
  const named = records.map(({ record, because }) => `${record} (${because})`)
  return {
    code: 'archive-damaged',
    message: `${countOf(records.length, 'record')} of this page cannot be read and had to be left out: ${named.join('; ')}.`,
    hint: 'All others are shown. Check the archive, and keep the newest backup.',
  }
}
