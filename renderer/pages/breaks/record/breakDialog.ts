import type { KeptPicture } from '#contract/specimens/pictureProcedures.ts'

/** What a person is asked on the page of a break. `timeS` null: to be typed. */
export type BreakDialog =
  | { kind: 'set-aside' | 'take-back' | 'reassign' | 'premature' | 'as-found' }
  | { kind: 'assess'; decidedPercent?: number }
  | { kind: 'picture'; picture: KeptPicture }
  | { kind: 'pick'; timeS: number | null }

/** What is decided with the curve in sight. */
export const decidesOfCurve: readonly BreakDialog['kind'][] = ['pick', 'premature', 'as-found']
