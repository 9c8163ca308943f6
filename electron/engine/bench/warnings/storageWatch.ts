import type { TroubleMessage } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'

/** What keeps readings from the disk, as the bench tells of it. */
export type StorageWatch = {
  /** null: all is written or on its way. */
  tell(problem: TroubleMessage | null): void
  problem(): TroubleMessage | null
}

/** Nothing is wrong yet. */
export function createStorageWatch(emit: Emit, changed: () => void): StorageWatch {
  let told: TroubleMessage | null = null
  return {
    tell(problem) {
      told = problem && {
        ...problem,
        message: `${problem.message} What is recorded waits in memory until it can be written.`,
      }
      if (told !== null) emit('trouble', told)
      changed()
    },
    problem: () => told,
  }
}
