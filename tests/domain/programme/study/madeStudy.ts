import { type StudyFields, studyFields } from '#contract/programme/study.ts'

/** A study of the boatyard school, with whatever a test is about. */
export function madeStudy(changed: Partial<StudyFields> = {}): StudyFields {
  return studyFields.parse({
    title: 'Which adhesive lasts in the bilge?',
    adhesives: ['casein C1', 'epoxy E4', 'resorcinol R2'],
    jointTypes: ['lap'],
    gapsMm: [0],
    exposures: ['loft', 'bilge'],
    agesMonths: [0, 3, 12],
    blocksPerCell: 12,
    seed: 7,
    ...changed,
  })
}

/** So many boards that give as many blocks each. */
export const madeBoards = (count: number, blocks: number) =>
  Array.from({ length: count }, (_, index) => ({ name: `board ${index + 1}`, blocks }))
