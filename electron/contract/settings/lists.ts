import * as z from 'zod'
import { listQuery } from '../listQuery.ts'
import { words } from '../values.ts'

/** A list whose columns are chosen and whose filters are kept. */
export const listName = z.enum(['specimens', 'breaks'])
export type ListName = z.infer<typeof listName>

/** What somebody looks for in a list again and again, under a name of its own. */
export const savedFilter = z.strictObject({
  name: words.min(1),
  list: listName,
  ...listQuery.pick({ text: true, status: true, filter: true }).shape,
})
export type SavedFilter = z.infer<typeof savedFilter>

/** The columns that a list shows, by their keys; of one that is missing, those that it begins with. */
export const chosenColumns = z.partialRecord(listName, z.array(words.min(1)).max(40))
