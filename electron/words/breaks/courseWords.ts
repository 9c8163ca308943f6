import type { LoadCourse } from '#contract/breaks/evaluation.ts'
import { withoutEndingZeros, writeFixed, writeSignificant } from '../units/numbers.ts'

/** A figure with its unit, or that it is not known. */
export function figureWords(value: number | null, decimals: number, unit: string): string {
  return value === null ? 'not known' : `${writeFixed(value, decimals)} ${unit}`
}

/** How fast the load rose: just before the peak, and on the way up with its spread. */
export function rateWords(justBeforeNPerS: number | null, course: LoadCourse | null): string {
  const { meanRateNPerS = null, rateSpreadPercent = null } = course ?? {}
  const spread = rateSpreadPercent === null ? '' : `, spread (SD) ${writeFixed(rateSpreadPercent, 0)} %`
  return `${figureWords(justBeforeNPerS, 1, 'N/s')} just before the peak, ${figureWords(meanRateNPerS, 1, 'N/s')} on the way up${spread}`
}

/** What the course of a load says, in SI units, line by line: name and words. */
export function courseWords(course: LoadCourse): [name: string, words: string][] {
  const { timeToPeakS, timeToFailureS, toe, impulseNs, workJ, pressSpeedMmPerS, peaks } = course
  const words: [string, string][] = [
    [
      'time',
      `${figureWords(timeToPeakS, 2, 's')} from start of loading to peak, ${figureWords(timeToFailureS, 2, 's')} to failure`,
    ],
    ['peaks', String(peaks)],
    ['area', `${figureWords(impulseNs, 0, 'N s')} under load and time`],
  ]
  if (toe !== null)
    words.push([
      'toe',
      `without slack the load would start at ${figureWords(toe.zeroTimeS, 3, 's')}; the peak is left as it is`,
    ])
  if (workJ !== null)
    words.push([
      'work',
      `${figureWords(workJ, 2, 'J')} ${pressSpeedMmPerS === null ? 'by the displacement measured' : `at ${withoutEndingZeros(writeSignificant(pressSpeedMmPerS, 4))} mm/s`}`,
    ])
  return words
}
