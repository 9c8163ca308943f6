import * as z from 'zod'

/** A record that is stored, but is not what it should be: a list shows the others and names it. */
export const unreadableRecord = z.strictObject({
  /** Such as "specimen 12". */
  record: z.string(),
  because: z.string(),
})
export type UnreadableRecord = z.infer<typeof unreadableRecord>

/** Those of an answer that cannot be read; absent: all can. */
export const unreadableRecords = z.array(unreadableRecord).optional()

/** What several readings had to leave out, as a part of one answer. */
export function leftOut(...readings: readonly { unreadable?: UnreadableRecord[] | undefined }[]): {
  unreadable?: UnreadableRecord[]
} {
  const unreadable = readings.flatMap((one) => one.unreadable ?? [])
  return unreadable.length === 0 ? {} : { unreadable }
}
