import * as z from 'zod'

/** The closed list of expected troubles. Each has one plain sentence (message) and one thing to do (hint). */
export const troubleCode = z.enum([
  'invalid-input',
  'unknown-procedure',
  'denied',
  'not-found',
  'conflict',
  'cancelled',
  'not-connected',
  'not-stable',
  'port-missing',
  'port-busy',
  'port-permission',
  'port-lost',
  'not-readable',
  'archive-missing',
  'archive-newer',
  'archive-read-only',
  'archive-in-use',
  'archive-damaged',
  'disk-full',
  'unsupported',
  'internal',
])
export type TroubleCode = z.infer<typeof troubleCode>

/** How a trouble crosses a process, a file or a wire. */
export const troubleMessage = z.strictObject({ code: troubleCode, message: z.string(), hint: z.string() })
export type TroubleMessage = z.infer<typeof troubleMessage>

/** An expected trouble: what is wrong and where (message), and what to do (hint). */
export class Trouble extends Error {
  readonly code: TroubleCode
  readonly hint: string
  constructor(code: TroubleCode, message: string, hint: string) {
    super(message)
    this.name = 'Trouble'
    this.code = code
    this.hint = hint
  }
}

/** What to do about a value that does not fit. */
export const correctTheValue = 'Correct the value named above and try again.'
/** What to do about what nobody expected. */
export const programFault = 'This is a fault of the program. See what was stored before you try again.'

/** Reduces anything thrown to the three fields that may cross a boundary. */
export function troubleFrom(thrown: unknown): TroubleMessage {
  if (thrown instanceof Trouble) return { code: thrown.code, message: thrown.message, hint: thrown.hint }
  if (thrown instanceof z.ZodError)
    return {
      code: 'invalid-input',
      message: z.prettifyError(thrown),
      hint: correctTheValue,
    }
  const message = thrown instanceof Error ? thrown.message : String(thrown)
  return { code: 'internal', message, hint: programFault }
}
