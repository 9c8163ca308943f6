import { progress } from '../tasks.ts'

/** What is said unasked while something takes long. */
export const keepingEvents = { 'task.progress': progress }
