import * as z from 'zod'
import { finite } from './values.ts'

/** What takes long enough to be watched and stopped, and how it is called in a sentence. One of each at a time. */
export const taskWords = {
  verify: 'Checking the archive',
  rebuild: 'Rebuilding the lists',
  demo: 'Filling the demo',
  comparison: 'Comparing curves',
  reevaluation: 'Evaluating breaks again',
  findings: 'Working out findings',
  allocation: 'Allocating blocks',
  import: 'Importing past results',
  specimens: 'Changing specimens',
  climate: 'Reading climate records',
} as const

export type TaskName = keyof typeof taskWords
export const taskName = z.enum(Object.keys(taskWords) as TaskName[])

/** How far a task is, in whatever it counts. */
export const progress = z.strictObject({ task: taskName, done: finite, total: finite })
export type Progress = z.infer<typeof progress>
