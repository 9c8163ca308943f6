import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { type Handlers, type ProcedureName, procedures } from '#contract/procedures.ts'
import type { Engine } from '#engine/core/engine.ts'

/** An engine without parts: it answers what the script says, and says what the test has it say. */
export type ScriptedEngine = Pick<Engine, 'handlers' | 'subscribe'> & { emit: Emit; listeners(): number }

/** Every procedure is there; one that the script leaves out answers with the trouble `unsupported`. */
export function createScriptedEngine(script: Partial<Handlers>): ScriptedEngine {
  const listeners = new Map<string, Set<(payload: never) => void>>()
  const unscripted = Object.fromEntries(
    (Object.keys(procedures) as ProcedureName[]).map((name) => [
      name,
      async () => {
        throw new Trouble('unsupported', `${name} is not scripted.`, 'Script it in the test.')
      },
    ]),
  ) as unknown as Handlers
  return {
    handlers: { ...unscripted, ...script },
    subscribe(name, listener) {
      const known = listeners.get(name) ?? new Set()
      listeners.set(name, known.add(listener))
      return () => known.delete(listener)
    },
    emit(name, payload) {
      for (const listener of listeners.get(name) ?? []) listener(payload as never)
    },
    listeners: () => [...listeners.values()].reduce((sum, known) => sum + known.size, 0),
  }
}
