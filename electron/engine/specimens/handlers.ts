import type { HandlersOf } from '#contract/procedures.ts'
import type { specimenProcedures } from '#contract/specimens/procedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Specimens: listed, opened, added, corrected by a newer revision. */
export function specimenHandlers({ archive, clock }: HandlerParts): HandlersOf<typeof specimenProcedures> {
  return {
    'specimens.list': (query) => archive.listSpecimens(query),
    'specimens.get': ({ specimenId }) => archive.specimen(specimenId),
    'specimens.add': ({ fields, by }) => archive.addSpecimen(fields, clock.instant(), by),
    'specimens.correct': ({ specimenId, fields, by, reason }) =>
      archive.correctSpecimen(specimenId, fields, clock.instant(), by, reason),
  }
}
