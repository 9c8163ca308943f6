import type { CurveEvent, EvaluationResult, LoadCourse } from '#contract/breaks/evaluation.ts'
import type { EvaluatedFile, ZeroOfFile } from '#engine/breaks/evaluateCurveFile.ts'
import { eventMeaning } from '#words/breaks/eventMeaning.ts'

/** How the zero of a curve in counts was found, in words. */
export const zeroWords = ({ offsetN, readings }: Extract<ZeroOfFile, { kind: 'rest' }>): string =>
  `${offsetN.toFixed(2)} N taken off, the mean of ${readings} steady readings before the load`

/** What a curve file says, for people: figures first, then what happened and what it may mean. */
export function evaluationText(file: string, { result, zero }: EvaluatedFile): string {
  const lines = [`${file}: ${outcomeWords[result.outcome]}`]
  const add = (name: string, words: string) => lines.push(`  ${name.padEnd(13)} ${words}`)
  if (result.outcome !== 'none') {
    add('peak', `${said(result.peakN, 1, 'N')} at ${said(result.peakTimeS, 4, 's')}`)
    add('loading rate', rateWords(result.loadingRateNPerS, result.course))
    add('sampling', boundWords(result))
  }
  if (result.course !== null) for (const [name, words] of courseWords(result.course)) add(name, words)
  if (zero?.kind === 'rest') add('zero', zeroWords(zero))
  add('samples', `${result.samples} at ${said(result.sampleRateHz, 2, 'Hz')}, ${result.missingSamples} missing`)
  if (result.flags.length > 0) add('flags', result.flags.join(', '))
  for (const event of result.events) {
    add(event.kind, eventFigures(event))
    add('', eventMeaning(event))
  }
  return `${lines.join('\n')}\n`
}

const outcomeWords = { break: 'broke', unloading: 'let go without a break', none: 'nothing was loaded' } as const

const said = (value: number | null, digits: number, unit: string) =>
  value === null ? 'unknown' : `${value.toFixed(digits)} ${unit}`

function boundWords({ samplingBoundN, samplingBoundPercent }: EvaluationResult): string {
  if (samplingBoundN === null || samplingBoundPercent === null)
    return 'how much higher the true peak can lie is unknown'
  const least = samplingBoundN < 0.05 ? 'less than 0.1 N' : `up to ${said(samplingBoundN, 1, 'N')}`
  const share = samplingBoundPercent < 0.005 ? 'less than 0.01 %' : said(samplingBoundPercent, 2, '%')
  return `the true peak can lie ${least} (${share}) higher`
}

function rateWords(justBefore: number | null, course: LoadCourse | null): string {
  const { meanRateNPerS = null, rateSpreadPercent = null } = course ?? {}
  return (
    `${said(justBefore, 1, 'N/s')} just before the peak, ${said(meanRateNPerS, 1, 'N/s')} on the way up` +
    (rateSpreadPercent === null ? '' : `, spread (SD) ${rateSpreadPercent.toFixed(0)} %`)
  )
}

function courseWords(course: LoadCourse): [name: string, words: string][] {
  const { timeToPeakS, timeToFailureS, toe, impulseNs, workJ, pressSpeedMmPerS, peaks } = course
  const words: [string, string][] = [
    ['time', `${said(timeToPeakS, 2, 's')} from onset to peak, ${said(timeToFailureS, 2, 's')} to failure`],
    ['peaks', String(peaks)],
    ['area', `${said(impulseNs, 0, 'N s')} under load and time`],
  ]
  if (toe !== null)
    words.push(['toe', `without slack the load would start at ${toe.zeroTimeS.toFixed(3)} s; the peak is as found`])
  if (workJ !== null)
    words.push([
      'work',
      `${said(workJ, 2, 'J')} ${pressSpeedMmPerS === null ? 'by the displacement measured' : `at ${pressSpeedMmPerS} mm/s`}`,
    ])
  return words
}

function eventFigures({ startTimeS, endTimeS, dropPercent, cycles, manner }: CurveEvent): string {
  return [
    `${startTimeS.toFixed(4)} to ${endTimeS.toFixed(4)} s`,
    ...(dropPercent === null ? [] : [`drop ${dropPercent.toFixed(1)} %`]),
    ...(cycles === null ? [] : [`${cycles} cycles`]),
    ...(manner === null ? [] : [manner]),
  ].join(', ')
}
