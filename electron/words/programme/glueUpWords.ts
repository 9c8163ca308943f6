import type { CatalogueFields } from '#contract/programme/catalogue.ts'

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
