import type { VerifyReport } from '#contract/keeping/archive.ts'

/** Something that does not hold: where, and what. */
export type Fault = VerifyReport['faults'][number]

/** Collects faults, so that one does not hide the next. */
export type Report = (fault: Fault) => void
