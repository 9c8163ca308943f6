import { progress } from '../tasks.ts'
import { nothing } from '../values.ts'

/** What is said unasked of the whole program and its archive. */
export const keepingEvents = {
  /** While something takes long. */
  'task.progress': progress,
  /** Another archive is open in place of the one that was: whatever was shown before belongs to that one. */
  'archive.switched': nothing,
}
