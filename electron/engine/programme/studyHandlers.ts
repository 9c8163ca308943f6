import type { HandlersOf } from '#contract/procedures.ts'
import type { StudyFields } from '#contract/programme/study.ts'
import type { studyProcedures } from '#contract/programme/studyProcedures.ts'
import { cellsOf as groupsOf } from '#domain/findings/observation.ts'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'
import { pooledVariation } from '#domain/programme/study/pooledVariation.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Studies: planned, corrected by a newer version, and their blocks allocated. */
export function studyHandlers({ archive, clock, demo, tasks, emit }: HandlerParts): HandlersOf<typeof studyProcedures> {
  /** Whatever is planned in a demo archive is a part of the demo. */
  const kept = async (fields: StudyFields): Promise<StudyFields> => ({
    ...fields,
    demo: fields.demo || (await demo.isOpen()),
  })

  return {
    'studies.list': () => archive.studies(),
    'studies.get': ({ studyId }) => archive.study(studyId),
    'studies.add': async ({ fields, by }) => archive.addStudy(await kept(fields), clock.instant(), by),
    'studies.correct': async ({ studyId, fields, by, reason }) =>
      archive.correctStudy(studyId, await kept(fields), clock.instant(), by, reason),
    'studies.allocate': ({ studyId, by }) =>
      tasks.run('allocation', (signal) =>
        archive.allocateStudy((progress) => emit('task.progress', progress), signal, studyId, clock.instant(), by),
      ),
    'studies.variation': async () => {
      const groups = groupsOf(observedBreaks(await archive.observations(), traits))
      return pooledVariation(groups.map(({ counted }) => counted.map(({ strengthMPa }) => strengthMPa)))
    },
  }
}

/** Tells a group from the others; nobody reads it. */
const traits = ({ adhesive, jointType, bondLineGapMm, exposure }: ObservedBreak) =>
  JSON.stringify([adhesive, jointType, bondLineGapMm, exposure])
