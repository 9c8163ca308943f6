import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { writeFixed, writeNumber } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** A length of time with as many digits as tell something: milliseconds below a tenth of a second. */
export function durationWords(seconds: number): string {
  if (Math.abs(seconds) < 0.1) return `${writeNumber(seconds * 1000, 1)}\u00a0ms`
  return `${writeFixed(seconds, Math.abs(seconds) < 10 ? 2 : 1)}\u00a0s`
}

/** Where an event lies on the time axis: an instant, or from when to when. */
export function eventTimeWords({ startTimeS, endTimeS }: Pick<CurveEvent, 'startTimeS' | 'endTimeS'>): string {
  const from = writeFixed(startTimeS, 3)
  if (endTimeS <= startTimeS) return `at ${from}\u00a0s`
  return `${from} to ${writeFixed(endTimeS, 3)}\u00a0s, ${durationWords(endTimeS - startTimeS)}`
}

/** What was measured of an event, name and value; what it does not have is left out. */
export function eventFigures(event: CurveEvent, force: Quantity): [name: string, value: string][] {
  const { fromN, percentOfPeak, dropN, dropPercent, cycles, meanDropN, leastDropN, periodS, manner } = event
  const several = event.kind === 'stick-slip'
  const figures: [string, string][] = []
  if (fromN !== null) figures.push(['Load', force.text(fromN)])
  if (percentOfPeak !== null) figures.push(['Of the peak', `${writeNumber(percentOfPeak, 1)} %`])
  if (dropN !== null)
    figures.push([
      several ? 'Largest drop' : 'Drop',
      force.text(dropN) + (dropPercent === null ? '' : ` (${writeNumber(dropPercent, 1)} %)`),
    ])
  else if (dropPercent !== null) figures.push(['Drop', `${writeNumber(dropPercent, 1)} %`])
  if (meanDropN !== null) figures.push(['Mean drop', force.text(meanDropN)])
  if (leastDropN !== null) figures.push(['Smallest drop', force.text(leastDropN)])
  if (cycles !== null) figures.push(['Cycles', String(cycles)])
  if (periodS !== null) figures.push(['Period', durationWords(periodS)])
  if (manner !== null) figures.push(['How it broke', manner === 'brittle' ? 'all at once' : 'in steps or slowly'])
  return figures
}

/** The same in one short line, in seconds and percent: "5.8000 to 5.9500 s, drop 10.0 %". */
export function eventLine({ startTimeS, endTimeS, dropPercent, cycles, manner }: CurveEvent): string {
  return [
    `${writeFixed(startTimeS, 4)} to ${writeFixed(endTimeS, 4)} s`,
    ...(dropPercent === null ? [] : [`drop ${writeFixed(dropPercent, 1)} %`]),
    ...(cycles === null ? [] : [`${cycles} cycles`]),
    ...(manner === null ? [] : [manner]),
  ].join(', ')
}
