import type * as z from 'zod'
import { benchProcedures } from './bench/procedures.ts'
import { breakProcedures } from './breaks/procedures.ts'
import { calibrationProcedures } from './calibration/procedures.ts'
import { ageingProcedures } from './findings/ageing.ts'
import { climateProcedures } from './findings/climateProcedures.ts'
import { keptFindingProcedures } from './findings/keptFindingProcedures.ts'
import { nextProcedures } from './findings/next.ts'
import { overviewProcedures } from './findings/overview.ts'
import { findingsProcedures } from './findings/procedures.ts'
import { keepingProcedures } from './keeping/procedures.ts'
import type { Procedure } from './procedure.ts'
import { breakingProcedures } from './programme/breakingProcedures.ts'
import { catalogueProcedures } from './programme/catalogueProcedures.ts'
import { glueUpProcedures } from './programme/glueUpProcedures.ts'
import { labelProcedures } from './programme/labelProcedures.ts'
import { pullProcedures } from './programme/pullProcedures.ts'
import { studyProcedures } from './programme/studyProcedures.ts'
import { reevaluationProcedures } from './reevaluation/procedures.ts'
import { settingsProcedures } from './settings/procedures.ts'
import { importProcedures } from './specimens/importProcedures.ts'
import { pictureProcedures } from './specimens/pictureProcedures.ts'
import { specimenProcedures } from './specimens/procedures.ts'

/** Everything that may be called, by name. Handlers, dispatcher, client and conformance tests derive from this object. */
export const procedures = {
  ...benchProcedures,
  ...breakProcedures,
  ...calibrationProcedures,
  ...breakingProcedures,
  ...catalogueProcedures,
  ...climateProcedures,
  ...glueUpProcedures,
  ...findingsProcedures,
  ...ageingProcedures,
  ...importProcedures,
  ...overviewProcedures,
  ...nextProcedures,
  ...keptFindingProcedures,
  ...keepingProcedures,
  ...labelProcedures,
  ...pullProcedures,
  ...reevaluationProcedures,
  ...pictureProcedures,
  ...settingsProcedures,
  ...specimenProcedures,
  ...studyProcedures,
} as const satisfies Record<string, Procedure>

export type Procedures = typeof procedures
export type ProcedureName = keyof Procedures
/** Those that ask; the others do something. */
export type QuestionName = { [N in ProcedureName]: Procedures[N]['kind'] extends 'question' ? N : never }[ProcedureName]
/** What a caller writes (defaults may be left out). */
export type InputOf<N extends ProcedureName> = z.input<Procedures[N]['input']>
/** What a handler receives (parsed, defaults filled in). */
export type ParsedInputOf<N extends ProcedureName> = z.output<Procedures[N]['input']>
export type OutputOf<N extends ProcedureName> = z.output<Procedures[N]['output']>

/** One function per procedure; the compiler asks for a missing one. */
export type Handlers = { [N in ProcedureName]: (input: ParsedInputOf<N>) => Promise<OutputOf<N>> }
/** The handlers of one subject: `HandlersOf<typeof breakProcedures>`. */
export type HandlersOf<P extends Partial<Procedures>> = Pick<Handlers, keyof P & ProcedureName>
