import type { CatalogueFields } from '#contract/programme/catalogue.ts'
import { calendarDayWords } from '../units/calendarDays.ts'

type Adhesive = Extract<CatalogueFields, { kind: 'adhesive' }>

/** What to know of an adhesive before it is used; '': the catalogue says nothing. */
export function adhesiveNoteWords({ mix, openTimeMin, clampTimeMin, safetyNote }: Adhesive): string {
  const parts = [
    mix === '' ? '' : `mix ${mix}`,
    openTimeMin === null ? '' : `open time ${openTimeMin} min`,
    clampTimeMin === null ? '' : `clamp time ${clampTimeMin} min`,
    safetyNote,
  ]
  return parts.filter((part) => part !== '').join(' · ')
}

/** What is asked about a lot that is said to have been used on a day (ISO 8601 date); null: nothing. */
export function lotQuestion(fields: CatalogueFields, gluedOn: string): string | null {
  if (fields.kind !== 'lot' || gluedOn === '') return null
  const { openedOn, expiresOn } = fields
  if (expiresOn !== null && expiresOn < gluedOn)
    return `It expired on ${calendarDayWords(expiresOn)}, before this glue-up. Was it used all the same?`
  if (openedOn !== null && openedOn > gluedOn)
    return `It was opened on ${calendarDayWords(openedOn)}, after this glue-up. Is it the right lot?`
  return null
}
