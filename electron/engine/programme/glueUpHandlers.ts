import type { HandlersOf } from '#contract/procedures.ts'
import type { glueUpProcedures } from '#contract/programme/glueUpProcedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Glue-ups: what can be glued, what was, and a session that makes specimens of its blocks. */
export function glueUpHandlers({ archive, clock, demo }: HandlerParts): HandlersOf<typeof glueUpProcedures> {
  return {
    'glueUps.list': () => archive.glueUps(),
    'glueUps.get': ({ glueUpId }) => archive.glueUp(glueUpId),
    'glueUps.studies': () => archive.studiesToGlue(),
    'glueUps.plan': ({ studyId }) => archive.glueUpPlan(studyId),
    'glueUps.add': async (input) =>
      archive.addGlueUp({ ...input, recordedAt: clock.instant(), demo: await demo.isOpen() }),
    'glueUps.correct': (input) => archive.correctGlueUp({ ...input, recordedAt: clock.instant() }),
  }
}
