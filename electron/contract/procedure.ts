import type * as z from 'zod'
import type { Topic } from './topics.ts'

/** Asks for what there is, and changes nothing. */
export type Question<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> = {
  kind: 'question'
  input: I
  output: O
  /** The records that the answer depends on: whoever shows it asks again when one was written. None: events tell of it. */
  reads(input: z.output<I>): readonly Topic[]
}

/** Does something; the answer says what came of it. */
export type Deed<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> = {
  kind: 'deed'
  input: I
  output: O
}

/** What may be called: one or the other. */
export type Procedure = Question | Deed

/** A procedure that asks. */
export function question<I extends z.ZodType, O extends z.ZodType>(
  parts: Pick<Question<I, O>, 'input' | 'output' | 'reads'>,
): Question<I, O> {
  return { kind: 'question', ...parts }
}

/** A procedure that does something. */
export function deed<I extends z.ZodType, O extends z.ZodType>(
  parts: Pick<Deed<I, O>, 'input' | 'output'>,
): Deed<I, O> {
  return { kind: 'deed', ...parts }
}
