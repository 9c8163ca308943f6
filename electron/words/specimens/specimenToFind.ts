import { figureToFind } from '../breaks/shownInLists.ts'
import { dayWords } from '../units/times.ts'

/** What is known of a specimen besides its texts: lengths in mm, area in mm2. */
export type FoundSpecimen = {
  lot: string
  bondLineGapMm: number | null
  overlapLengthMm: number | null
  overlapWidthMm: number | null
  areaMm2: number | null
  gluedOn: string | null
}

/** All words, besides its texts, by which a specimen can be found in a list. */
export function specimenToFind(specimen: FoundSpecimen): string {
  const { lot, bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn } = specimen
  return [
    lot,
    bondLineGapMm === 0 ? 'tight joint' : '',
    figureToFind('gap', bondLineGapMm, 'length'),
    figureToFind('overlap', overlapLengthMm, 'length'),
    figureToFind('overlap', overlapWidthMm, 'length'),
    figureToFind('area', areaMm2, 'area'),
    gluedOn === null ? '' : dayWords(`${gluedOn}T12:00:00`),
    gluedOn ?? '',
  ].join(' ')
}
