import { Trouble } from '#contract/errors.ts'
import { type TaskName, taskWords } from '#contract/tasks.ts'

/** Tasks that take long enough to be stopped: one of each name at a time. */
export type LongTasks = {
  /** Runs it under a signal; rejects with Trouble `conflict` while one of that name runs, `cancelled` when it was stopped. */
  run<T>(task: TaskName, work: (signal: AbortSignal) => Promise<T>): Promise<T>
  /** The same, but waits until all of that name that were to run in turn before are over, whatever became of them. */
  runInTurn<T>(task: TaskName, work: (signal: AbortSignal) => Promise<T>): Promise<T>
  isRunning(task: TaskName): boolean
  /** True when one was running. */
  cancel(task: TaskName): boolean
  cancelAll(): void
}

/** Keeps account of what runs. */
export function createLongTasks(): LongTasks {
  const running = new Map<TaskName, AbortController>()
  const lastInTurn = new Map<TaskName, Promise<unknown>>()
  const tasks: LongTasks = {
    async run(task, work) {
      if (running.has(task))
        throw new Trouble(
          'conflict',
          `${taskWords[task]} is under way already.`,
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
          `${taskWords[task]} was stopped before it was done.`,
          'Start it again when it suits.',
        )
      } finally {
        running.delete(task)
      }
    },
    runInTurn(task, work) {
      const result = (lastInTurn.get(task) ?? Promise.resolve()).then(() => tasks.run(task, work))
      lastInTurn.set(
        task,
        result.catch(() => {}),
      )
      return result
    },
    isRunning: (task) => running.has(task),
    cancel(task) {
      const controller = running.get(task)
      controller?.abort()
      return controller !== undefined
    },
    cancelAll() {
      for (const controller of running.values()) controller.abort()
    },
  }
  return tasks
}
