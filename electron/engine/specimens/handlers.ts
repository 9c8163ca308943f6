// Held by tests/engine/core/demoArchive.spec.ts.
import type { HandlersOf } from '#contract/procedures.ts'
import type { specimenProcedures } from '#contract/specimens/procedures.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import type { Progress } from '#contract/tasks.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Specimens: listed, opened, added, corrected by a newer revision. */
export function specimenHandlers({
  archive,
  clock,
  demo,
  tasks,
  emit,
}: HandlerParts): HandlersOf<typeof specimenProcedures> {
  /** Whatever is entered in a demo archive is a part of the demo, so that nobody's own block ever lies in the virtual press. */
  const kept = async (fields: SpecimenFields): Promise<SpecimenFields> => ({
    ...fields,
    demo: fields.demo || (await demo.isOpen()),
  })

  /** An act on many specimens: all of them or none, told how far it is. */
  const many = (act: (tell: (progress: Progress) => void, signal: AbortSignal) => Promise<number>) =>
    tasks.run('specimens', (signal) => act((progress) => emit('task.progress', progress), signal))

  return {
    'specimens.list': (query) => archive.listSpecimens(query),
    'specimens.get': ({ specimenId }) => archive.specimen(specimenId),
    'typedResults.add': ({ readings, by }) => archive.addDialReadings(readings, clock.instant(), by),
    'typedResults.decide': (decision) => archive.decideTypedResult({ ...decision, recordedAt: clock.instant() }),
    'specimens.ids': (query) => archive.specimenIds(query),
    'specimens.move': ({ specimenIds, place, ...signature }) =>
      many((tell, signal) => archive.moveSpecimens(tell, signal, specimenIds, place, clock.instant(), signature)),
    'specimens.withdraw': ({ specimenIds, kind, ...signature }) =>
      many((tell, signal) => archive.withdrawSpecimens(tell, signal, specimenIds, kind, clock.instant(), signature)),
    'specimens.add': async ({ fields, by }) => archive.addSpecimen(await kept(fields), clock.instant(), by),
    'specimens.correct': async ({ specimenId, fields, by, reason }) =>
      archive.correctSpecimen(specimenId, await kept(fields), clock.instant(), by, reason),
  }
}
