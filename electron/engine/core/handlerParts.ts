import type { TroubleMessage } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { DemoArchive } from './demoArchive.ts'
import type { EngineParts } from './engine.ts'
import type { LongTasks } from './longTask.ts'
import type { ReadingArchive } from './readingArchive.ts'

/** What every group of procedures is made of. */
export type HandlerParts = Omit<EngineParts, 'openSource'> & {
  emit: Emit
  reading: ReadingArchive
  tasks: LongTasks
  demo: DemoArchive
  /** What could not be read when the archive was opened; null: all could. */
  openingTrouble: TroubleMessage | null
}
