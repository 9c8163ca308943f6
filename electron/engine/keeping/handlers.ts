// Held by tests/contract/realEngine.spec.ts.
import type { keepingProcedures } from '#contract/keeping/procedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { fillDemo, heldOfDemo } from './fillDemo.ts'

/** What concerns the whole program: what it is, whether its archive is sound, what takes long. */
export function keepingHandlers(parts: HandlerParts): HandlersOf<typeof keepingProcedures> {
  const { archive, tasks, emit, program } = parts
  return {
    'app.info': async () => ({
      program,
      ...parts.host,
      archive: await archive.info(),
      chainFinding: parts.chainFinding ?? null,
      preferences: await archive.preferences(),
    }),
    'archive.head': () => archive.chainHead(),
    'archive.verify': () =>
      tasks.run('verify', (signal) => archive.verify((progress) => emit('task.progress', progress), signal)),
    'demo.fill': () =>
      tasks.run('demo', async (signal) => {
        if ((await heldOfDemo(archive)) !== 'all')
          await fillDemo(archive, program, (progress) => emit('task.progress', progress), signal)
        return archive.info()
      }),
    'task.cancel': async ({ task }) => tasks.cancel(task),
  }
}
