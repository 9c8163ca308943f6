import type { HandlersOf } from '#contract/procedures.ts'
import type { StudyFields } from '#contract/programme/study.ts'
import type { studyProcedures } from '#contract/programme/studyProcedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** Studies: planned, corrected by a newer version, and their blocks allocated. */
export function studyHandlers({
  archive,
  reading,
  clock,
  demo,
  tasks,
  emit,
}: HandlerParts): HandlersOf<typeof studyProcedures> {
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
    'studies.variation': () => reading.ask((reader) => reader.variation()),
  }
}
