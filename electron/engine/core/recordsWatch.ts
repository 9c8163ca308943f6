import type { Archive } from '#archive/archive.ts'
import { troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { type Handlers, type ProcedureName, procedures } from '#contract/procedures.ts'
import type { Topic } from '#contract/topics.ts'

export type RecordsWatch = {
  /** Resolves when everything written so far is told. */
  caughtUp(): Promise<void>
  end(): void
}

/**
 * Tells of each write of the archive, once. The engine itself catches up first, so that whoever asks because of it hears
 * nothing older; what it cannot read then is told as a trouble.
 */
export function watchRecords(
  archive: Pick<Archive, 'onChange'>,
  emit: Emit,
  catchUp: (written: readonly Topic[]) => Promise<void>,
): RecordsWatch {
  let told = Promise.resolve()
  const end = archive.onChange((written) => {
    told = told
      .then(() => catchUp(written))
      .catch((thrown: unknown) => emit('trouble', troubleFrom(thrown)))
      .then(() => emit('records.changed', { topics: [...written] }))
  })
  return { caughtUp: () => told, end }
}

/** The same handlers, but a deed is done only when the engine has caught up with what it wrote. */
export function deedsCatchUp(handlers: Handlers, { caughtUp }: Pick<RecordsWatch, 'caughtUp'>): Handlers {
  const caught = (name: string, handle: (input: never) => Promise<unknown>) =>
    procedures[name as ProcedureName].kind === 'question'
      ? handle
      : async (input: never) => {
          const answer = await handle(input)
          await caughtUp()
          return answer
        }
  return Object.fromEntries(
    Object.entries(handlers).map(([name, handle]) => [name, caught(name, handle as never)]),
  ) as unknown as Handlers
}
