import type { DetectionSettings } from '#contract/records/detection.ts'
import type { CurveEvent, EvaluationResult, Flag } from '#contract/records/evaluation.ts'
import type { LoadEnd } from './loadCurve.ts'
import type { LoadProfile } from './loadProfile.ts'
import { boundPercent, samplingBound } from './samplingBound.ts'
import { seatingEndS } from './seating.ts'

type Stretch = { startTimeS: number; endTimeS: number }

/** What the machine has found in a curve, before it is put in words. */
export type FoundInCurve = {
  glitches: Stretch[]
  gaps: Stretch[]
  /** null: no loading started. */
  end: LoadEnd | null
  /** Noise SD at rest before the loading; null: the curve starts under load. */
  noise: number | null
  onsetS: number
  /** Level at rest. */
  zero: number
}

type Stream = { samples: number; missingSamples: number; intervalS: number; noiseAtRest: number | null }

/** Above this share of the peak, in percent, the sampling bound is a doubt about the result (domain rule). */
const boundLimitPercent = 1

/** Drops that never reach this share of the peak are not worth a word. */
const leastDropOfPeak = 0.01

/** Puts what was found in a curve into the contract's form. Checked: tests/domain/signal/evaluateCurve.spec.ts. */
export function composeResult(
  found: FoundInCurve,
  profile: LoadProfile,
  settings: DetectionSettings,
  stream: Stream,
): EvaluationResult {
  const { samples, missingSamples, intervalS } = stream
  const sampleRateHz = intervalS > 0 ? 1 / intervalS : null
  const flags: Flag[] = []
  if (missingSamples > 0) flags.push('gap')
  const end = found.end
  // After a break frame and cell swing; what looks like a glitch there is none and touches nothing.
  const untilS = end?.breakS ?? Number.POSITIVE_INFINITY
  const glitches = found.glitches.filter(({ startTimeS }) => startTimeS <= untilS)
  if (glitches.length > 0) flags.push('glitch')
  const events: CurveEvent[] = [
    ...found.gaps.map((gap) => plainEvent('gap', gap)),
    ...glitches.map((glitch) => plainEvent('glitch', glitch)),
  ]
  const nothing = {
    outcome: 'none',
    peakN: null,
    peakTimeS: null,
    onsetTimeS: null,
    breakTimeS: null,
    sampleRateHz,
    samples,
    missingSamples,
    noiseN: found.end === null ? stream.noiseAtRest : found.noise,
    loadingRateNPerS: null,
    samplingBoundN: null,
    samplingBoundPercent: null,
    afterBreakN: null,
    flags,
    events: inOrder(events),
    course: null,
  } satisfies EvaluationResult
  if (end === null || end.outcome === 'none') return nothing

  if (found.noise === null) flags.push('no-pre-trigger')
  if (end.clipping.clipped()) {
    flags.push('clipped')
    events.push(plainEvent('clipping', { startTimeS: end.clipping.startS(), endTimeS: end.clipping.endS() }))
  }
  if (end.clipping.overCapacity()) flags.push('over-capacity')
  if (found.gaps.some((gap) => covers(gap, end.peakS) || (end.breakS !== null && covers(gap, end.breakS))))
    flags.push('gap-at-peak')
  const boundN =
    end.loadingRate !== null && intervalS > 0 ? samplingBound(end.loadingRate, intervalS, settings.settlingTimeS) : null
  const percent = boundN === null ? null : boundPercent(boundN, end.peak)
  if (percent !== null && percent > boundLimitPercent) flags.push('sampling-too-slow')

  const seatedS = seatingEndS(profile.until(end.peakS))
  if (seatedS !== null) events.push(plainEvent('seating', { startTimeS: found.onsetS, endTimeS: seatedS }))
  const { drops } = end
  if (drops.count > 0 && drops.largest >= leastDropOfPeak * (end.peak - found.zero))
    events.push({
      kind: drops.count === 1 ? 'pop-in' : 'stick-slip',
      startTimeS: drops.firstStartS,
      endTimeS: drops.lastEndS,
      dropN: drops.largest,
      dropPercent: (100 * drops.largest) / drops.largestFrom,
      cycles: drops.count === 1 ? null : drops.count,
      ...noDetail,
    })

  return {
    ...nothing,
    outcome: end.outcome,
    peakN: end.peak,
    peakTimeS: end.peakS,
    onsetTimeS: found.onsetS,
    breakTimeS: end.breakS,
    loadingRateNPerS: end.loadingRate,
    samplingBoundN: boundN,
    samplingBoundPercent: percent,
    afterBreakN: end.afterBreak,
    events: inOrder(events),
  }
}

const noDetail = {
  fromN: null,
  percentOfPeak: null,
  meanDropN: null,
  leastDropN: null,
  periodS: null,
  manner: null,
} as const

const covers = (gap: Stretch, timeS: number) => gap.startTimeS <= timeS && timeS <= gap.endTimeS

const plainEvent = (kind: CurveEvent['kind'], { startTimeS, endTimeS }: Stretch): CurveEvent => ({
  kind,
  startTimeS,
  endTimeS,
  dropN: null,
  dropPercent: null,
  cycles: null,
  ...noDetail,
})

const inOrder = (events: CurveEvent[]) => events.sort((a, b) => a.startTimeS - b.startTimeS || a.endTimeS - b.endTimeS)
