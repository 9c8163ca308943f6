// Held by tests/engine/findings/climate/climateHandlers.spec.ts.
import * as z from 'zod'
import { Trouble } from '../errors.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { nothing, words } from '../values.ts'
import { climateDecision, climateImportSummary, climateLimits, climateMapping, climateStore } from './climate.ts'
import { climateOfStore, climateOutcome, climateProposal, exposureClimate } from './climateAnswers.ts'

/** The largest file that a page sends, in bytes: about two years at one reading a minute. The command takes larger ones. */
export const largestLoggerFileBytes = 30_000_000

/** Throws the trouble "invalid-input" for a file that is larger; asked before it is sent, and again where it arrives. */
export function refuseLargeLoggerFile(fileName: string, bytes: number): void {
  if (bytes > largestLoggerFileBytes)
    throw new Trouble(
      'invalid-input',
      `"${fileName}" has ${(bytes / 1e6).toFixed(1)} MB; a page can send ${largestLoggerFileBytes / 1e6} MB.`,
      'Bring it in with the command climate, which takes up to 200 MB, or divide it.',
    )
}

const file = z.strictObject({ fileName: words, content: z.instanceof(Uint8Array) })
const wanted = file.extend({ mapping: climateMapping, store: climateStore })

/** Climate of the stores: read from files of loggers in a thread of its own, told of by the task "climate", and stopped with it. */
export const climateProcedures = {
  /** What the columns of a file may mean. */
  'climate.propose': deed({
    input: file.extend({ sheet: words.nullable().default(null), headerRow: climateMapping.shape.headerRow.nullable() }),
    output: climateProposal,
  }),
  /** What an import would come to; nothing is stored. */
  'climate.try': deed({ input: wanted, output: climateOutcome }),
  /** Brings the new readings of a file in, all or none. */
  'climate.import': deed({ input: wanted.extend({ by: words }), output: climateOutcome }),
  /** Every file that was brought in, newest first. */
  'climate.imports': question({
    input: nothing,
    output: z.array(climateImportSummary),
    reads: () => ['climate', 'catalogue'],
  }),
  'climate.decide': deed({
    input: climateDecision.pick({ climateImportId: true, kind: true }).extend(signature.shape),
    output: climateDecision,
  }),
  'climate.of': question({
    input: z.strictObject({ store: climateStore, limits: climateLimits.prefault({}) }),
    output: climateOfStore,
    reads: () => ['climate', 'results', 'specimens', 'catalogue', 'studies', 'glue-ups'],
  }),
  /** What each exposure that has readings did to its blocks. */
  'climate.exposures': question({
    input: nothing,
    output: z.array(exposureClimate),
    reads: () => ['climate', 'catalogue'],
  }),
}
