import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import type { Stretch } from '../stream/stretches.ts'
import { highestCutoffHz, lowestCutoffHz } from './butterworth.ts'
import { isFastEnough, samplesPerClass } from './channelFrequencyClass.ts'
import { type Refusal, rounded, roundedDown, roundedUp } from './refusal.ts'
import { windowRefusal } from './windowRefusal.ts'

/**
 * Steps whose SD is above this share of their mean are too uneven for a filter that takes them for even. At the highest
 * frequency that a class lets pass, a tenth of the sample rate, times that are out by a quarter of an interval put a sample
 * out by 9 degrees of its wave.
 */
const mostJitter = 0.25

/**
 * Why a filter cannot be used on a curve; null where it can: a class below 10 samples a second for each Hz of it, a cutoff
 * above 0.8 of half the sample rate, a window of fewer than three samples or longer than the curve, or samples that come too unevenly.
 *
 * Checked: tests/domain/signal/filters/filterRefusal.spec.ts.
 */
export function filterRefusal(filter: CurveFilter, stretches: readonly Stretch[]): Refusal | null {
  if (filter.kind === 'moving-average') return windowRefusal(filter.windowS, stretches)
  const intervals = stretches.filter(({ from, to }) => to - from > 1).map(({ intervalS }) => intervalS)
  if (intervals.length === 0) return null
  const longestS = intervals.reduce((longest, intervalS) => Math.max(longest, intervalS))
  const jitter = stretches.reduce((most, stretch) => Math.max(most, stretch.jitter), 0)
  if (jitter > mostJitter)
    return {
      because: `The samples of this curve come too unevenly for this filter: their steps differ by ${rounded(100 * jitter)} % (SD).`,
      cure: 'Take a moving average, which goes by time.',
    }
  if (filter.kind === 'cfc') return classRefusal(filter.frequencyClass, longestS)
  const shortestS = intervals.reduce((shortest, intervalS) => Math.min(shortest, intervalS))
  return cutoffRefusal(filter.cutoffHz, longestS, shortestS)
}

function classRefusal(frequencyClass: number, intervalS: number): Refusal | null {
  if (isFastEnough(frequencyClass, intervalS)) return null
  return {
    because: `CFC ${frequencyClass} needs ${samplesPerClass * frequencyClass} samples a second, and this curve has ${rounded(1 / intervalS)}.`,
    cure: `Take a Butterworth filter of at most ${roundedDown(highestCutoffHz(intervalS))} Hz, or a moving average.`,
  }
}

function cutoffRefusal(cutoffHz: number, longestS: number, shortestS: number): Refusal | null {
  const highest = highestCutoffHz(longestS)
  if (cutoffHz > highest)
    return {
      because: `${rounded(cutoffHz)} Hz is too high for a curve of ${rounded(1 / longestS)} samples a second.`,
      cure: `Take at most ${roundedDown(highest)} Hz.`,
    }
  const lowest = lowestCutoffHz(shortestS)
  if (cutoffHz < lowest)
    return {
      because: `${rounded(cutoffHz)} Hz is too low for a curve of ${rounded(1 / shortestS)} samples a second.`,
      cure: `Take at least ${roundedUp(lowest)} Hz.`,
    }
  return null
}
