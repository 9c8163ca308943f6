import type { Handlers } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { fillDemo, heldOfDemo } from './fillDemo.ts'

type Names = 'app.info' | 'preferences.set' | 'archive.verify' | 'task.cancel' | 'demo.fill'

/** What concerns the whole program: what it is, what it remembers, whether its archive is sound. */
export function appHandlers(parts: HandlerParts): Pick<Handlers, Names> {
  const { archive, tasks, emit } = parts
  return {
    'app.info': async () => ({
      program: parts.program,
      ...parts.host,
      archive: await archive.info(),
      preferences: parts.preferences(),
    }),
    'preferences.set': (change) => parts.changePreferences(change),
    'archive.verify': () =>
      tasks.run('verify', (signal) => archive.verify((progress) => emit('task.progress', progress), signal)),
    'task.cancel': async ({ task }) => tasks.cancel(task),
    'demo.fill': () =>
      tasks.run('demo', async (signal) => {
        if ((await heldOfDemo(archive)) !== 'all') {
          await fillDemo(archive, parts.program, (progress) => emit('task.progress', progress), signal)
          await parts.recordsChanged([], [])
        }
        return archive.info()
      }),
  }
}
