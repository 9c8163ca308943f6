// Held by tests/engine/core/demoArchive.spec.ts.
import type { HandlersOf } from '#contract/procedures.ts'
import type { specimenProcedures } from '#contract/specimens/procedures.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Specimens: listed, opened, added, corrected by a newer revision. */
export function specimenHandlers({ archive, clock, demo }: HandlerParts): HandlersOf<typeof specimenProcedures> {
  /** Whatever is entered in a demo archive is a part of the demo, so that nobody's own block ever lies in the virtual press. */
  const kept = async (fields: SpecimenFields): Promise<SpecimenFields> => ({
    ...fields,
    demo: fields.demo || (await demo.isOpen()),
  })

  return {
    'specimens.list': (query) => archive.listSpecimens(query),
    'specimens.get': ({ specimenId }) => archive.specimen(specimenId),
    'typedResults.add': ({ readings, by }) => archive.addDialReadings(readings, clock.instant(), by),
    'typedResults.decide': (decision) => archive.decideTypedResult({ ...decision, recordedAt: clock.instant() }),
    'specimens.ids': (query) => archive.specimenIds(query),
    'specimens.move': ({ specimenIds, place, ...signature }) =>
      archive.moveSpecimens(specimenIds, place, clock.instant(), signature),
    'specimens.withdraw': ({ specimenIds, kind, ...signature }) =>
      archive.withdrawSpecimens(specimenIds, kind, clock.instant(), signature),
    'specimens.add': async ({ fields, by }) => archive.addSpecimen(await kept(fields), clock.instant(), by),
    'specimens.correct': async ({ specimenId, fields, by, reason }) =>
      archive.correctSpecimen(specimenId, await kept(fields), clock.instant(), by, reason),
  }
}
