import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { Outcome } from '#contract/breaks/evaluation.ts'
import { type ClippingWatch, createClippingWatch } from '../stream/clippingWatch.ts'
import { beginFall, type FallenLoad } from './fall/fallenLoad.ts'
import { fallWindowS, hasFallen } from './fall/fallRule.ts'
import { createLetDownWatch, forgottenShare, idleLoadS } from './letDown.ts'
import { leastPeakThresholds, loadingOutcome } from './loadingOutcome.ts'
import type { LoadMemory } from './loadMemory.ts'
import { createLoadPeak } from './peak/loadPeak.ts'

/** Where a loading begins and what is known of the bench at that moment. */
export type LoadStart = {
  onsetS: number
  /** Level at rest: shares of the load are taken above it. */
  zero: number
  noise: number
  /** At rest hardly two samples in a row were equal. */
  isNoisy: boolean
  threshold: number
  intervalS: number
  /** Highest sample so far and its time. */
  highest: number
  highestS: number
}

/** What a loading came to. */
export type LoadEnd = {
  outcome: Outcome
  peak: number
  peakS: number
  breakS: number | null
  afterBreak: number | null
  loadingRate: number | null
  /** How long the fall took, s; null: no break, or it cannot be told. */
  fallS: number | null
  clipping: ClippingWatch
}

/** A specimen is loaded from the onset to this share of the peak (loadingOutcome.ts). */
const loadedShare = 0.8

/** Follows one loading from its start to its end in constant memory. */
export type LoadCurve = {
  /** Takes good samples and hands them to the memory until the loading is over; returns the index after the last one taken. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  over(): boolean
  /** Highest good sample so far. */
  peak(): number
  end(): LoadEnd
}

/**
 * The rules of a loading, each in a file of its own:
 *
 *   peak        the highest good sample up to the fall (peak/loadPeak.ts)
 *   fall        the load goes down at once or in sudden steps (fall/fallRule.ts)
 *   break       a fall that lasts (fall/fallenLoad.ts)
 *   unloading   the load is let down or left hanging (letDown.ts)
 *   none        too little or too sudden for a loading (loadingOutcome.ts)
 *
 * The memory holds the newest sample whenever a rule is asked that looks back.
 * Checked: tests/domain/signal/loading/loadCurve.spec.ts, tests/domain/signal/loading/evaluateCurve.spec.ts,
 * tests/reference/corpus.spec.ts.
 */
export function createLoadCurve(settings: DetectionSettings, memory: LoadMemory, start: LoadStart): LoadCurve {
  const { zero, threshold } = start
  const { recent, means } = memory
  const windowS = fallWindowS(settings, start.intervalS)
  const clipping = createClippingWatch(settings, start.isNoisy)
  const letDown = createLetDownWatch(settings, threshold)
  const peak = createLoadPeak(recent, start, {
    zero,
    threshold,
    // Above this share a load is neither fallen nor low.
    share: Math.max(1 - settings.breakDropShare, settings.endShare, forgottenShare),
    withinS: idleLoadS,
  })
  let fallen: FallenLoad | null = null
  let over = false

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    let remembered = from
    const rememberUntil = (end: number) => {
      memory.take(timeS, force, remembered, end)
      if (fallen === null) clipping.take(timeS, force, reading, remembered, end)
      remembered = end
    }
    const ordinalOf = (i: number) => recent.count() + i - remembered
    let i = from
    while (i < to && !over) {
      if (fallen === null) {
        const next = peak.follow(timeS, force, i, to, ordinalOf(i))
        if (next > i) letDown.near()
        i = next
        if (i === to) break
        rememberUntil(i + 1)
        over = lookCloser(timeS[i]!, force[i]!)
      } else {
        const verdict = fallen.push(timeS[i]!, force[i]!)
        over = verdict === 'lasts'
        if (verdict === 'recovers') {
          rememberUntil(i + 1)
          fallen = null
          peak.see(timeS[i]!, force[i]!, recent.count() - 1)
        }
      }
      i += 1
    }
    rememberUntil(i)
    return i
  }

  /** Asks the rules about the newest sample in memory; true when the loading is over. */
  function lookCloser(timeS: number, force: number): boolean {
    if (peak.slopeIsDue(recent.count())) peak.keepSlope()
    if (peak.isNear(timeS, force)) {
      letDown.near()
      return false
    }
    const load = force - zero
    const peakLoad = peak.force() - zero
    if (
      peakLoad >= leastPeakThresholds * threshold &&
      hasFallen(memory, { force, load, peakLoad }, settings, windowS)
    ) {
      peak.keepSlope()
      fallen = beginFall(recent, { zero, peak: peak.force(), windowS }, settings)
      return false
    }
    return letDown.isOver(timeS, load, peakLoad, timeS - peak.timeS())
  }

  function end(): LoadEnd {
    if (fallen === null) peak.keepSlope()
    const peakLoad = peak.force() - zero
    const loadedInS = means.firstReachedS(zero + loadedShare * peakLoad) - start.onsetS
    const outcome = loadingOutcome({ peakLoad, threshold, loadedInS, fell: fallen !== null })
    const broken = outcome === 'break' ? fallen : null
    return {
      outcome,
      peak: peak.force(),
      peakS: peak.timeS(),
      breakS: broken?.breakS ?? null,
      afterBreak: broken?.afterBreak() ?? null,
      loadingRate: peak.slope(),
      fallS: broken?.fallS() ?? null,
      clipping,
    }
  }

  return { take, over: () => over, peak: peak.force, end }
}
