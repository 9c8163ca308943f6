import { figureToFind } from '../breaks/shownInLists.ts'
import { dayWords } from '../units/times.ts'

/** What is known of a specimen besides its texts: lengths in mm, area in mm2. */
export type FoundSpecimen = {
  bondLineGapMm: number | null
  overlapLengthMm: number | null
  overlapWidthMm: number | null
  areaMm2: number | null
  gluedOn: string | null
}

/** The figures by which a specimen can be found in a list: its joint, and the day of its glue-up. */
export function specimenToFind(specimen: FoundSpecimen): string {
  const { bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn } = specimen
  return [
    figureToFind('gap', bondLineGapMm, 'length'),
    figureToFind('overlap', overlapLengthMm, 'length'),
    figureToFind('overlap', overlapWidthMm, 'length'),
    figureToFind('area', areaMm2, 'area'),
    gluedOn === null ? '' : dayWords(`${gluedOn}T12:00:00`),
    gluedOn ?? '',
  ].join(' ')
}
