import * as z from 'zod'
import { programFault, Trouble, troubleFrom } from '../errors.ts'
import { type Handlers, type ProcedureName, procedures } from '../procedures.ts'
import type { Reply } from './carrier.ts'

/** As much of an unknown name as is said back. */
const longestName = 100

/** What to do where the deed was done and only its answer is wrong: what is stored was held against its schema before. */
const doneAllTheSame = 'What was asked for was done, only the answer is wrong: load the page again before you go on.'

/**
 * Answers a call by name: refuses unknown names, parses the input, parses the output, and turns whatever is thrown into an
 * error that may cross a boundary. Never rejects.
 */
export function createDispatcher(handlers: Handlers): (name: unknown, input: unknown) => Promise<Reply> {
  return async (name, input) => {
    try {
      if (typeof name !== 'string' || !Object.hasOwn(procedures, name))
        throw new Trouble(
          'unknown-procedure',
          `There is no procedure called "${typeof name === 'string' ? name.slice(0, longestName) : typeof name}".`,
          'The page and the program differ in version: reload the page or restart the program.',
        )
      const procedure = procedures[name as ProcedureName]
      const handler = handlers[name as ProcedureName] as (input: unknown) => Promise<unknown>
      const output = procedure.output.safeParse(await handler(procedure.input.parse(input)))
      if (!output.success)
        throw new Trouble(
          'internal',
          `"${name}" was answered in a form that the contract does not know: ${z.prettifyError(output.error)}`,
          procedure.kind === 'deed' ? doneAllTheSame : programFault,
        )
      return { ok: true, value: output.data }
    } catch (thrown) {
      return { ok: false, error: troubleFrom(thrown) }
    }
  }
}
