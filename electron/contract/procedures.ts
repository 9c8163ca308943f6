import * as z from 'zod'
import { benchState, listening, serialPort } from './bench/bench.ts'
import { sourceChoice } from './bench/source.ts'
import { assessment } from './breaks/assessment.ts'
import { breakRecord, breakSummary } from './breaks/break.ts'
import { forceCurve } from './breaks/curve.ts'
import { setAsideCause } from './breaks/decision.ts'
import { reviewProcedures } from './breaks/reviewProcedures.ts'
import { calibrationProcedures } from './calibration/procedures.ts'
import { archiveInfo, verifyReport } from './keeping/archive.ts'
import { listQuery } from './listQuery.ts'
import { preferences, preferencesChange } from './settings/settings.ts'
import { signature } from './signature.ts'
import { specimen, specimenFields } from './specimens/specimen.ts'
import { specimenRecord, specimenSummary } from './specimens/specimenRecord.ts'
import { id } from './values.ts'

const nothing = z.strictObject({})
const breakId = z.strictObject({ breakId: id })
const specimenId = z.strictObject({ specimenId: id })

/** Every question the page may ask, by name. Handler, dispatcher, client and conformance tests derive from this object. */
export const procedures = {
  'app.info': {
    input: nothing,
    output: z.strictObject({
      program: z.string(),
      host: z.enum(['desktop', 'loopback', 'direct']),
      /** What this host can do beyond the common ground. */
      capabilities: z.array(z.enum(['choose-file', 'print-to-pdf'])),
      archive: archiveInfo,
      preferences,
    }),
  },
  'preferences.set': { input: preferencesChange, output: preferences },

  'ports.list': { input: nothing, output: z.array(serialPort) },
  'ports.listen': {
    input: z.strictObject({
      path: z.string().min(1),
      baudRate: z.int().positive(),
      seconds: z.number().min(0.2).max(30),
    }),
    output: listening,
  },

  'bench.state': { input: nothing, output: benchState },
  'bench.connect': { input: z.strictObject({ source: sourceChoice }), output: benchState },
  'bench.disconnect': { input: nothing, output: benchState },
  'bench.tare': { input: nothing, output: benchState },
  'bench.arm': { input: z.strictObject({ armed: z.boolean() }), output: benchState },
  /** null: the next capture belongs to no specimen. */
  'bench.takeSpecimen': { input: z.strictObject({ specimenId: id.nullable() }), output: benchState },
  'bench.nextSpecimen': { input: nothing, output: benchState },
  /** For a virtual amplifier only: loads the next virtual specimen now. */
  'bench.loadVirtual': { input: nothing, output: benchState },

  'specimens.list': {
    input: listQuery,
    output: z.strictObject({ total: z.int(), rows: z.array(specimenSummary) }),
  },
  'specimens.get': { input: specimenId, output: specimenRecord },
  'specimens.add': { input: z.strictObject({ fields: specimenFields, by: z.string() }), output: specimen },
  'specimens.correct': {
    input: z.strictObject({ ...specimenId.shape, fields: specimenFields, ...signature.shape }),
    output: specimen,
  },

  'breaks.list': { input: listQuery, output: z.strictObject({ total: z.int(), rows: z.array(breakSummary) }) },
  'breaks.get': { input: breakId, output: breakRecord },
  /** maxPoints: thinned by minimum and maximum to at most so many points; the peak always stays. */
  'breaks.curve': {
    input: z.strictObject({
      ...breakId.shape,
      fromS: z.number().nullable().default(null),
      toS: z.number().nullable().default(null),
      maxPoints: z.int().min(100).nullable().default(null),
    }),
    output: forceCurve,
  },
  'breaks.assess': {
    input: z.strictObject({
      ...breakId.shape,
      ...assessment.pick({ woodFailurePercent: true, failurePattern: true, note: true, by: true }).shape,
    }),
    output: breakRecord,
  },
  'breaks.setAside': {
    input: z.strictObject({ ...breakId.shape, cause: setAsideCause.default('other'), ...signature.shape }),
    output: breakRecord,
  },
  'breaks.takeBack': { input: z.strictObject({ ...breakId.shape, ...signature.shape }), output: breakRecord },
  'breaks.reassign': {
    input: z.strictObject({ ...breakId.shape, specimenId: id.nullable(), ...signature.shape }),
    output: breakRecord,
  },

  ...reviewProcedures,
  ...calibrationProcedures,

  'archive.verify': { input: nothing, output: verifyReport },
  /** Stops a long task of that name; true when one was running. */
  'task.cancel': { input: z.strictObject({ task: z.string() }), output: z.boolean() },
  'demo.fill': { input: nothing, output: archiveInfo },
} as const satisfies Record<string, { input: z.ZodType; output: z.ZodType }>

export type Procedures = typeof procedures
export type ProcedureName = keyof Procedures
/** What a caller writes (defaults may be left out). */
export type InputOf<N extends ProcedureName> = z.input<Procedures[N]['input']>
/** What a handler receives (parsed, defaults filled in). */
export type ParsedInputOf<N extends ProcedureName> = z.output<Procedures[N]['input']>
export type OutputOf<N extends ProcedureName> = z.output<Procedures[N]['output']>

/** One function per procedure; the compiler asks for a missing one. */
export type Handlers = { [N in ProcedureName]: (input: ParsedInputOf<N>) => Promise<OutputOf<N>> }
