import { Trouble } from '#contract/errors.ts'

/** Tasks that take long enough to be stopped: one of each name at a time. */
export type LongTasks = {
  /** Runs it under a signal; rejects with Trouble `conflict` while one of that name runs, `cancelled` when it was stopped. */
  run<T>(task: string, work: (signal: AbortSignal) => Promise<T>): Promise<T>
  /** True when one was running. */
  cancel(task: string): boolean
  cancelAll(): void
}

/** What a task does, as people call it. */
const workWords: Readonly<Record<string, string>> = {
  verify: 'Checking the archive',
  demo: 'Filling the demo',
  comparison: 'Comparing curves',
  reevaluation: 'Evaluating breaks again',
}

const wordsFor = (task: string) => workWords[task] ?? `The task "${task}"`

/** Keeps account of what runs. */
export function createLongTasks(): LongTasks {
  const running = new Map<string, AbortController>()
  return {
    async run(task, work) {
      if (running.has(task))
        throw new Trouble(
          'conflict',
          `${wordsFor(task)} is under way already.`,
          'Wait until it is done, or cancel it first.',
        )
      const controller = new AbortController()
      running.set(task, controller)
      try {
        const result = await work(controller.signal)
        controller.signal.throwIfAborted()
        return result
      } catch (thrown) {
        if (!controller.signal.aborted) throw thrown
        throw new Trouble(
          'cancelled',
          `${wordsFor(task)} was stopped before it was done.`,
          'Start it again when it suits.',
        )
      } finally {
        running.delete(task)
      }
    },
    cancel(task) {
      const controller = running.get(task)
      controller?.abort()
      return controller !== undefined
    },
    cancelAll() {
      for (const controller of running.values()) controller.abort()
    },
  }
}
