import { figureToFind } from '../breaks/shownInLists.ts'
import { ageInMonthsWords } from '../units/calendarDays.ts'
import { calendarDayToFind } from '../units/times.ts'

/** What is known of a specimen besides its texts: lengths in mm, area in mm2. */
export type FoundSpecimen = {
  bondLineGapMm: number | null
  overlapLengthMm: number | null
  overlapWidthMm: number | null
  areaMm2: number | null
  gluedOn: string | null
  ageMonths: number | null
}

/** The figures by which a specimen can be found in a list: its joint, the day of its glue-up, its age. */
export function specimenToFind(specimen: FoundSpecimen): string {
  const { bondLineGapMm, overlapLengthMm, overlapWidthMm, areaMm2, gluedOn, ageMonths } = specimen
  return [
    figureToFind('gap', bondLineGapMm, 'length'),
    figureToFind('overlap', overlapLengthMm, 'length'),
    figureToFind('overlap', overlapWidthMm, 'length'),
    figureToFind('area', areaMm2, 'area'),
    calendarDayToFind(gluedOn),
    ageMonths === null ? '' : `age ${ageInMonthsWords(ageMonths)} age ${ageMonths} months`,
  ].join(' ')
}
