import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Limits, TestPractice } from '#contract/settings/practice.ts'

export type LoadingAspect = 'time-to-failure' | 'rate' | 'stress-rate' | 'speed' | 'sampling-bound'

/**
 * How one figure of a loading stands to a test practice. Value and limits: s, N/s, MPa/s, mm/min, percent, in the order of the
 * aspects. The sentence has no figure with a unit of force or length: those stand beside it.
 */
export type JudgedAspect = {
  aspect: LoadingAspect
  value: number | null
  limits: Limits
  verdict: 'inside' | 'outside' | 'not-known'
  sentence: string
}

/** Limits hold but for the last bits: 50 mm/min kept as mm/s and turned back is 50 mm/min. */
const room = 1e-9

/**
 * Judges how a specimen was loaded by the limits of a test practice, one line for each figure that the practice limits.
 *
 *   rate         mean rate of the loading, 10 % to 90 % of the peak
 *   stress rate  that rate / bonded area, 1 N/mm² = 1 MPa
 *   speed        60 x the speed given for the press, mm/s; a curve of load alone cannot show it
 *
 * Throws RangeError for an area that is not above 0. Checked: tests/domain/signal/practice/judgeLoading.spec.ts.
 */
export function judgeLoading(result: EvaluationResult, areaMm2: number | null, practice: TestPractice): JudgedAspect[] {
  if (areaMm2 !== null && !(areaMm2 > 0)) throw new RangeError('judgeLoading requires an area above 0')
  const { course } = result
  const rateNPerS = course?.meanRateNPerS ?? null
  const speedMmPerS = course?.pressSpeedMmPerS ?? null
  const noCourse = result.outcome === 'none' ? nothingLoaded : olderMethod
  const noRate = course === null ? noCourse : noForce
  const samplingBoundPercent: Limits = { least: null, most: practice.samplingBoundPercent }
  const judged = [
    judge('time-to-failure', course?.timeToFailureS ?? null, practice.timeToFailureS, {
      unknown: course === null ? noCourse : 'There was no failure, so there is no time to it.',
      inside: 'The joint failed within the time that this practice allows.',
      below: 'The joint failed sooner than this practice allows: load more slowly.',
      above: 'The joint failed later than this practice allows: load faster.',
    }),
    judge('rate', rateNPerS, practice.rateNPerS, { unknown: noRate, ...rateSentences }),
    judge('stress-rate', rateNPerS === null || areaMm2 === null ? null : rateNPerS / areaMm2, practice.rateMPaPerS, {
      unknown: rateNPerS === null ? noRate : 'The bonded area is not known: enter it with the specimen.',
      ...rateSentences,
    }),
    judge('speed', speedMmPerS === null ? null : 60 * speedMmPerS, practice.speedMmPerMin, {
      unknown:
        course === null
          ? noCourse
          : 'No speed of the press was given: a load curve alone cannot show it. Measure it with a rule and a watch, give it in the settings, and evaluate the break again.',
      inside: 'The press moved as fast as this practice wants.',
      below: 'The press moved more slowly than this practice allows.',
      above: 'The press moved faster than this practice allows.',
    }),
    judge('sampling-bound', result.samplingBoundPercent, samplingBoundPercent, {
      unknown: result.flags.includes('clipped')
        ? 'The converter was at its end: how much higher the load went is not known.'
        : 'The sampling bound is not known: there is no loading rate just before the peak.',
      inside: 'The samples follow one another closely enough for the peak.',
      below: '',
      above: `The true peak may lie further above the highest sample than this practice allows: ${cureOf(result, practice)}`,
    }),
  ]
  return judged.filter((line) => line !== null)
}

const nothingLoaded = 'Nothing was loaded.'
const olderMethod = 'An older method made this result and did not look for it: evaluate the break again.'
const noForce = 'The loading rate is not known: there is no scale, or the curve has too few samples.'

const rateSentences = {
  inside: 'The load rose as fast as this practice wants.',
  below: 'The load rose more slowly than this practice allows: load faster.',
  above: 'The load rose faster than this practice allows: load more slowly.',
}

function judge(
  aspect: LoadingAspect,
  value: number | null,
  limits: Limits,
  sentences: { unknown: string; inside: string; below: string; above: string },
): JudgedAspect | null {
  const { least, most } = limits
  if (least === null && most === null) return null
  if (value === null) return { aspect, value, limits, verdict: 'not-known', sentence: sentences.unknown }
  if (least !== null && value < least * (1 - room))
    return { aspect, value, limits, verdict: 'outside', sentence: sentences.below }
  if (most !== null && value > most * (1 + room))
    return { aspect, value, limits, verdict: 'outside', sentence: sentences.above }
  return { aspect, value, limits, verdict: 'inside', sentence: sentences.inside }
}

/** The bound shrinks as the sample rate grows, the settling of the converter with it. */
function cureOf({ sampleRateHz, samplingBoundPercent, flags }: EvaluationResult, practice: TestPractice): string {
  if (flags.includes('gap-at-peak')) return 'samples are missing at the peak, so look to cable and connection.'
  if (sampleRateHz === null || samplingBoundPercent === null || practice.samplingBoundPercent === null)
    return 'sample faster, or load more slowly.'
  const neededHz = (sampleRateHz * samplingBoundPercent) / practice.samplingBoundPercent
  return `sample at ${roundedUp(neededHz)} Hz or faster, or load more slowly.`
}

/** To two digits, never down. */
function roundedUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1)
  return Number((Math.ceil(value / step - room) * step).toPrecision(2))
}
