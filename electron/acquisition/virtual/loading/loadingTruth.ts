// Held by tests/acquisition/virtual/benchModel.spec.ts.
import type { LoadHigh } from './loadingMoves.ts'
import type { LoadingKind, LoadingPlan } from './loadingPlan.ts'
import type { VirtualSpecimen } from './specimen.ts'

/**
 * What truly happened in one loading. Times in device seconds since the stream's first sample, forces in newtons above
 * the zero at first contact, unless said otherwise.
 */
export type LoadingTruth = {
  /** 1, 2, ... in the order of loading. */
  number: number
  kind: LoadingKind
  outcome: 'break' | 'unloading'
  areaMm2: number
  /** Highest force on the specimen, between samples or not. */
  peakN: number
  peakTimeS: number
  /** Highest sample that left the amplifier while the specimen was under load, glitches left aside: counts, N, and when. */
  highestSampleCounts: number | null
  highestSampleN: number | null
  highestSampleTimeS: number | null
  /** First contact. */
  onsetTimeS: number
  /** Start of the final fracture; null when there was none. */
  breakTimeS: number | null
  afterBreakN: number | null
  /** The press has been let back and nothing is left on the specimen. */
  endTimeS: number
  loadingRateNPerS: number
  seatingEndTimeS: number
  popIns: { timeS: number; fromN: number; dropN: number }[]
  stickSlip: { cycles: number; drops: { timeS: number; fromN: number; dropN: number }[] }
  meanRateNPerS: number
  highs: LoadHigh[]
  holds: LoadingPlan['holds']
  reloads: LoadingPlan['reloads']
  plateau: LoadingPlan['plateau']
  finalDrop: LoadingPlan['finalDrop']
  glitchTimesS: number[]
  gaps: { timeS: number; missing: number }[]
  droppedSamples: number
  /** A gap lies over the highest force. */
  gapAtPeak: boolean
  /** The converter stood at an end code because of the load. */
  clipped: boolean
  /** Samples that left the amplifier between first contact and release. */
  samplesSent: number
  noiseN: number
}

/** The truth of a loading that begins now; what only the samples can tell is filled in by `noteSample`. */
export function beginTruth(
  number: number,
  kind: LoadingKind,
  specimen: VirtualSpecimen,
  plan: LoadingPlan,
  startS: number,
  noiseN: number,
): LoadingTruth {
  const later = <T extends { timeS: number }>(event: T): T => ({ ...event, timeS: event.timeS + startS })
  return {
    number,
    kind,
    outcome: plan.outcome,
    areaMm2: specimen.areaMm2,
    peakN: plan.peakN,
    peakTimeS: startS + plan.peakTimeS,
    highestSampleCounts: null,
    highestSampleN: null,
    highestSampleTimeS: null,
    onsetTimeS: startS,
    breakTimeS: plan.breakTimeS === null ? null : startS + plan.breakTimeS,
    afterBreakN: plan.afterBreakN,
    endTimeS: startS + plan.durationS,
    loadingRateNPerS: plan.loadingRateNPerS,
    seatingEndTimeS: startS + plan.seatingEndS,
    popIns: plan.popIns.map(later),
    stickSlip: { cycles: plan.stickSlip.cycles, drops: plan.stickSlip.drops.map(later) },
    meanRateNPerS: plan.meanRateNPerS,
    highs: plan.highs.map(later),
    holds: plan.holds.map((hold) => ({ ...later(hold), endTimeS: hold.endTimeS + startS })),
    reloads: plan.reloads.map((reload) => ({ ...later(reload), lowestTimeS: reload.lowestTimeS + startS })),
    plateau: plan.plateau && { timeS: plan.plateau.timeS + startS, endTimeS: plan.plateau.endTimeS + startS },
    finalDrop: plan.finalDrop && later(plan.finalDrop),
    glitchTimesS: [],
    gaps: [],
    droppedSamples: 0,
    gapAtPeak: false,
    clipped: false,
    samplesSent: 0,
    noiseN,
  }
}

/** Takes a sample that left the amplifier during the loading into its truth. */
export function noteSample(
  truth: LoadingTruth,
  timeS: number,
  counts: number,
  glitch: boolean,
  clipped: boolean,
): void {
  truth.samplesSent += 1
  if (glitch) {
    truth.glitchTimesS.push(timeS)
    return
  }
  if (clipped) truth.clipped = true
  if (truth.highestSampleCounts === null || counts > truth.highestSampleCounts) {
    truth.highestSampleCounts = counts
    truth.highestSampleTimeS = timeS
  }
}
