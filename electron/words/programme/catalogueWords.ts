import type { CatalogueFields, CatalogueKind } from '#contract/programme/catalogue.ts'
import type { MergePreview } from '#contract/programme/catalogueProcedures.ts'
import { calendarDayWords } from '../units/calendarDays.ts'
import { countOf } from '../units/counts.ts'

/** What the kinds of entries are called, one and several. */
export const catalogueKinds: Readonly<Record<CatalogueKind, { one: string; oneMore: string; several: string }>> = {
  adhesive: { one: 'adhesive', oneMore: 'an adhesive', several: 'Adhesives' },
  lot: { one: 'lot', oneMore: 'a lot', several: 'Lots' },
  wood: { one: 'wood', oneMore: 'a wood', several: 'Woods' },
  board: { one: 'board', oneMore: 'a board', several: 'Boards' },
  'joint-type': { one: 'joint type', oneMore: 'a joint type', several: 'Joint types' },
  exposure: { one: 'exposure', oneMore: 'an exposure', several: 'Exposures' },
  operator: { one: 'person', oneMore: 'a person', several: 'People' },
  place: { one: 'place', oneMore: 'a place', several: 'Places' },
}

/** Said of a name that no record can hold. */
export const nameTooLong = 'A name has 200 characters at most.'

/** The name of what an entry belongs to; '': nothing. */
export function ownerNameOf(fields: CatalogueFields): string {
  if (fields.kind === 'lot') return fields.adhesive
  return fields.kind === 'board' ? fields.wood : ''
}

/** What tells an entry from others at a glance, without figures that have a unit of the reader's; undefined: nothing is known. */
export function entryDetail(fields: CatalogueFields): string | undefined {
  const words = detailWords(fields).filter((one) => one !== '')
  return words.length === 0 ? undefined : words.join(', ')
}

function detailWords(fields: CatalogueFields): string[] {
  switch (fields.kind) {
    case 'adhesive':
      return [fields.adhesiveClass, fields.maker]
    case 'lot':
      return [
        `of ${fields.adhesive}`,
        fields.openedOn === null ? '' : `opened ${calendarDayWords(fields.openedOn)}`,
        fields.expiresOn === null ? '' : `expires ${calendarDayWords(fields.expiresOn)}`,
      ]
    case 'wood':
      return [fields.species]
    case 'board':
      return [fields.wood === '' ? '' : `of ${fields.wood}`]
    case 'place':
      return [fields.capacityBlocks === null ? '' : `room for ${fields.capacityBlocks} blocks`]
    default:
      return []
  }
}

/** Why two entries are pointed out. */
export function alikeWords(differ: 'case' | 'letter'): string {
  return differ === 'case' ? 'they differ by spaces, hyphens or accents alone' : 'they differ by one letter'
}

/** What a merge makes one. */
export function mergeWords(preview: MergePreview, from: string, into: string): string {
  const { fromSpecimens, intoSpecimens, groups } = preview
  const joined =
    groups.length === 0 ? 'No two groups become one' : `${countOf(groups.length, 'group')} of each become one`
  if (fromSpecimens === null || intoSpecimens === null) return `${from} counts as ${into}.`
  return `${countOf(fromSpecimens, 'specimen')} of ${from} and ${intoSpecimens} of ${into} are shown as ${into}. ${joined}.`
}
