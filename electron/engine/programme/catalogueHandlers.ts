// Held by tests/contract/realEngine.spec.ts.
import type { HandlersOf } from '#contract/procedures.ts'
import type { catalogueProcedures } from '#contract/programme/catalogueProcedures.ts'
import type { HandlerParts } from '../core/handlerParts.ts'

/** The catalogue: listed, opened, added to, corrected, merged and taken apart again. */
export function catalogueHandlers({ archive, reading, clock }: HandlerParts): HandlersOf<typeof catalogueProcedures> {
  return {
    'catalogue.choices': ({ kind }) => archive.catalogueChoices(kind),
    'catalogue.list': ({ kind }) => archive.catalogueList(kind),
    'catalogue.counts': () => archive.catalogueCounts(),
    'catalogue.get': ({ entryId }) => archive.catalogueRecord(entryId),
    'catalogue.previewMerge': ({ fromEntryId, intoEntryId }) =>
      reading.ask((reader) => reader.previewMerge(fromEntryId, intoEntryId)),
    'catalogue.add': ({ fields, by }) => archive.addCatalogueEntry(fields, clock.instant(), by),
    'catalogue.correct': ({ entryId, fields, ...signature }) =>
      archive.correctCatalogueEntry(entryId, fields, clock.instant(), signature),
    'catalogue.merge': async ({ fromEntryId, intoEntryId, ...signature }) => {
      await archive.mergeCatalogueEntries(fromEntryId, intoEntryId, clock.instant(), signature)
      return {}
    },
    'catalogue.takeBackMerge': async ({ entryId, ...signature }) => {
      await archive.takeBackCatalogueMerge(entryId, clock.instant(), signature)
      return {}
    },
  }
}
