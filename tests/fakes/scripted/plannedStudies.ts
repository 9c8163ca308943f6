import { type StudyFields, studyFields } from '#contract/programme/study.ts'
import type { PullSource } from '#domain/programme/calendar/studyPulls.ts'

/** A study with nothing glued yet, as the archive gives it. */
export function plannedStudy(change: Partial<StudyFields> = {}, source: Partial<PullSource> = {}): PullSource {
  const fields = studyFields.parse({
    ...{ title: 'Loft and bilge', adhesives: ['casein C1'], jointTypes: ['long grain to long grain'], gapsMm: [0] },
    ...{ exposures: ['loft'], agesMonths: [0, 6, 12], blocksPerCell: 12, seed: 1 },
    ...change,
  })
  return {
    study: { studyId: 1, revision: 1, recordedAt: '2026-04-01T00:00:00.000Z', by: 'bench', reason: '', fields },
    ...{ counts: [], unglued: [], decisions: [], spares: [], corrections: 0, glueUps: [] },
    ...source,
  }
}
