// Held by tests/contract/realEngine.spec.ts.
import { Trouble } from '#contract/errors.ts'
import type { keepingProcedures } from '#contract/keeping/procedures.ts'
import type { HandlersOf } from '#contract/procedures.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import type { HandlerParts } from '../core/handlerParts.ts'
import { type DemoMakers, fillDemo, heldOfDemo } from './demo/fillDemo.ts'

/** What concerns the whole program: what it is, whether its archive is sound, what takes long. */
export function keepingHandlers(parts: HandlerParts, makers: DemoMakers): HandlersOf<typeof keepingProcedures> {
  const { archive, tasks, emit, program, demo } = parts
  return {
    'app.info': async () => ({
      program,
      ...parts.host,
      archive: await archive.info(),
      chainFinding: parts.chainFinding ?? null,
      openingTrouble: parts.openingTrouble,
      demo: await demo.isOpen(),
      preferences: await archive.preferences(),
    }),
    'archive.head': () => archive.chainHead(),
    'archive.verify': () =>
      tasks.run('verify', (signal) => archive.verify((progress) => emit('task.progress', progress), signal)),
    'demo.fill': async () => {
      try {
        return await tasks.run('demo', async (signal) => {
          await demo.require()
          if ((await heldOfDemo(archive)) !== 'all')
            await fillDemo(
              archive,
              program,
              makers,
              (progress) => emit('task.progress', progress),
              signal,
              localDayOf(parts.clock.instant()),
            )
          return archive.info()
        })
      } finally {
        // Its pulls are listed only from now on, and no record says that it is over
        emit('records.changed', { topics: ['studies'] })
      }
    },
    'archive.switch': oneArchiveOnly,
    'archive.known': oneArchiveOnly,
    'archive.choose': oneArchiveOnly,
    'task.cancel': async ({ task }) => tasks.cancel(task),
  }
}

/** The engine has one archive; a shell that can exchange it answers in its place. */
async function oneArchiveOnly(): Promise<never> {
  throw new Trouble(
    'unsupported',
    'Another archive cannot be opened from here.',
    'End the program, and start it with "breakledger serve --demo" for the demo or "breakledger serve" for your own archive.',
  )
}
