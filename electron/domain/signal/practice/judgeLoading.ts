import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Limits, TestPractice } from '#contract/settings/practice.ts'

export type LoadingAspect = 'time-to-failure' | 'rate' | 'stress-rate' | 'speed' | 'sampling-bound'

/** Why a figure is not known. no-rate-at-peak: none just before the peak. */
export type UnknownBecause =
  | 'nothing-loaded'
  | 'older-method'
  | 'no-failure'
  | 'no-rate'
  | 'no-area'
  | 'no-speed'
  | 'clipped'
  | 'no-rate-at-peak'

/**
 * How one figure of a loading stands to a test practice. Value and limits: s, N/s, MPa/s, mm/min, percent, in the order of the
 * aspects.
 */
export type JudgedAspect = {
  aspect: LoadingAspect
  value: number | null
  limits: Limits
  verdict: 'inside' | 'outside' | 'not-known'
  /** On which side of the limits; null unless outside. */
  side: 'below' | 'above' | null
  /** Set where the verdict is `not-known`. */
  unknownBecause: UnknownBecause | null
  /** What a sampling bound above its limit asks for; Hz, null: that cannot be said. */
  cure: { kind: 'close-the-gap' } | { kind: 'sample-faster'; sampleRateHz: number | null } | null
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
  const noCourse = result.outcome === 'none' ? 'nothing-loaded' : 'older-method'
  const noRate = course === null ? noCourse : 'no-rate'
  const rateMPaPerS = rateNPerS === null || areaMm2 === null ? null : rateNPerS / areaMm2
  const speedMmPerMin = speedMmPerS === null ? null : 60 * speedMmPerS
  const timeS = course?.timeToFailureS ?? null
  const samplingBoundPercent: Limits = { least: null, most: practice.samplingBoundPercent }
  const noBound = result.flags.includes('clipped') ? 'clipped' : 'no-rate-at-peak'
  const judged = [
    judge('time-to-failure', timeS, practice.timeToFailureS, course === null ? noCourse : 'no-failure'),
    judge('rate', rateNPerS, practice.rateNPerS, noRate),
    judge('stress-rate', rateMPaPerS, practice.rateMPaPerS, rateNPerS === null ? noRate : 'no-area'),
    judge('speed', speedMmPerMin, practice.speedMmPerMin, course === null ? noCourse : 'no-speed'),
    judge('sampling-bound', result.samplingBoundPercent, samplingBoundPercent, noBound),
  ].filter((line) => line !== null)
  return judged.map((line) =>
    line.aspect === 'sampling-bound' && line.side === 'above' ? { ...line, cure: cureOf(result, practice) } : line,
  )
}

function judge(
  aspect: LoadingAspect,
  value: number | null,
  limits: Limits,
  unknownBecause: UnknownBecause,
): JudgedAspect | null {
  const { least, most } = limits
  if (least === null && most === null) return null
  const line = { aspect, value, limits, side: null, unknownBecause: null, cure: null }
  if (value === null) return { ...line, verdict: 'not-known', unknownBecause }
  if (least !== null && value < least * (1 - room)) return { ...line, verdict: 'outside', side: 'below' }
  if (most !== null && value > most * (1 + room)) return { ...line, verdict: 'outside', side: 'above' }
  return { ...line, verdict: 'inside' }
}

/** The bound shrinks as the sample rate grows, the settling of the converter with it. */
function cureOf(
  { sampleRateHz, samplingBoundPercent, flags }: EvaluationResult,
  practice: TestPractice,
): JudgedAspect['cure'] {
  if (flags.includes('gap-at-peak')) return { kind: 'close-the-gap' }
  const allowedPercent = practice.samplingBoundPercent
  if (sampleRateHz === null || samplingBoundPercent === null || allowedPercent === null)
    return { kind: 'sample-faster', sampleRateHz: null }
  return { kind: 'sample-faster', sampleRateHz: roundedUp((sampleRateHz * samplingBoundPercent) / allowedPercent) }
}

/** To two digits, never down. */
function roundedUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1)
  return Number((Math.ceil(value / step - room) * step).toPrecision(2))
}
