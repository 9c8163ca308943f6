import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { CurveEvent, EvaluationResult, Flag } from '#contract/breaks/evaluation.ts'
import type { LoadedCurve } from '../events/loadedCurve.ts'
import { plainEvent } from '../events/plainEvent.ts'
import { readEvents } from '../events/readEvents.ts'
import type { LoadEnd } from './loadCurve.ts'
import { boundPercent, samplingBound } from './samplingBound.ts'

type Stretch = { startTimeS: number; endTimeS: number }

/** What the machine has found in a curve, before it is put in words. */
export type FoundInCurve = {
  glitches: (Stretch & { jump: number })[]
  gaps: Stretch[]
  /** null: no loading started. */
  end: LoadEnd | null
  /** Noise SD at rest before the loading; null: the curve starts under load. */
  noise: number | null
  /** Noise SD that the loading is judged by; 0: not known. */
  sigma: number
  onsetS: number
  /** Level at rest. */
  zero: number
  /** Usual interval when the loading started, s; 0: not known. */
  intervalS: number
}

type Stream = { samples: number; missingSamples: number; intervalS: number; noiseAtRest: number | null }

/** Above this share of the peak, in percent, the sampling bound is a doubt about the result (domain rule). */
const boundLimitPercent = 1

/** Puts what was found in a curve into the contract's form. Checked: tests/domain/signal/loading/curveResult.spec.ts. */
export function composeResult(
  found: FoundInCurve,
  means: Pick<LoadedCurve, 'timeS' | 'force' | 'samplesPerMean'>,
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
  const hidden = found.gaps.filter((gap) => covers(gap, end.peakS) || (end.breakS !== null && covers(gap, end.breakS)))
  if (hidden.length > 0) flags.push('gap-at-peak')
  const boundOver = (stretchS: number) =>
    end.loadingRate !== null && stretchS > 0 ? samplingBound(end.loadingRate, stretchS, settings.settlingTimeS) : null
  const usualPercent = percentOf(boundOver(intervalS), end.peak)
  if (usualPercent !== null && usualPercent > boundLimitPercent) flags.push('sampling-too-slow')
  // Over missing samples the load could rise for longer; above the end of the converter nothing bounds it.
  const longestS = Math.max(intervalS, ...hidden.map(({ startTimeS, endTimeS }) => endTimeS - startTimeS))
  const boundN = end.clipping.clipped() ? null : boundOver(longestS)

  const read = readEvents(
    {
      ...means,
      intervalS: found.intervalS,
      zero: found.zero,
      noise: found.sigma,
      onsetS: found.onsetS,
      peak: end.peak,
      peakS: end.peakS,
      breakS: end.breakS,
      afterBreak: end.afterBreak,
      fallS: end.fallS,
      clipped: end.clipping.clipped(),
    },
    settings,
  )
  events.push(...read.events)

  return {
    ...nothing,
    outcome: end.outcome,
    peakN: end.peak,
    peakTimeS: end.peakS,
    onsetTimeS: found.onsetS,
    breakTimeS: end.breakS,
    loadingRateNPerS: end.loadingRate,
    samplingBoundN: boundN,
    samplingBoundPercent: percentOf(boundN, end.peak),
    afterBreakN: end.afterBreak,
    events: inOrder(events),
    course: read.course,
  }
}

const percentOf = (boundN: number | null, peakN: number) => (boundN === null ? null : boundPercent(boundN, peakN))

const covers = (gap: Stretch, timeS: number) => gap.startTimeS <= timeS && timeS <= gap.endTimeS

const inOrder = (events: CurveEvent[]) => events.sort((a, b) => a.startTimeS - b.startTimeS || a.endTimeS - b.endTimeS)
