import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import type { GlueUpFields } from '#contract/programme/glueUp.ts'
import type { StudyFields } from '#contract/programme/study.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'

/** A name as a record writes it. */
export type Written = {
  readonly kind: CatalogueKind
  readonly name: string
  /** The adhesive that a lot is of, the wood that a board is of; '' for all others, and where it is not known. */
  readonly of: string
}

const one = (kind: CatalogueKind, name: string, of = ''): Written => ({ kind, name, of })

/** The keys of a specimen's fields that the catalogue knows. */
export type NamedKey = 'adhesive' | 'lot' | 'wood' | 'board' | 'jointType' | 'exposure' | 'place'

/** What a specimen names. */
export function writtenOfSpecimen(
  fields: Pick<SpecimenFields, Exclude<NamedKey, 'wood' | 'board'>> & Partial<SpecimenFields>,
): Readonly<Record<NamedKey, Written>> {
  const { adhesive, lot, wood = '', board = '', jointType, exposure, place } = fields
  return {
    adhesive: one('adhesive', adhesive),
    lot: one('lot', lot, adhesive),
    wood: one('wood', wood),
    board: one('board', board, wood),
    jointType: one('joint-type', jointType),
    exposure: one('exposure', exposure),
    place: one('place', place),
  }
}

/** What a study names. */
export function writtenOfStudy(fields: StudyFields): Written[] {
  return [
    ...fields.adhesives.map((name) => one('adhesive', name)),
    ...fields.jointTypes.map((name) => one('joint-type', name)),
    ...fields.exposures.map((name) => one('exposure', name)),
    one('wood', fields.wood),
    ...fields.boards.map(({ name }) => one('board', name, fields.wood)),
  ]
}

/** What a glue-up names. */
export function writtenOfGlueUp(fields: GlueUpFields): Written[] {
  return fields.lots.flatMap(({ adhesive, lot }) => [one('adhesive', adhesive), one('lot', lot, adhesive)])
}
