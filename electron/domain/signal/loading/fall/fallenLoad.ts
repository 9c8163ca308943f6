import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { RecentSamples } from '../../stream/recentSamples.ts'
import { beginFallRecord } from './fallRecord.ts'

/** A load that has fallen, until it shows whether the fall lasts. */
export type FallenLoad = {
  /** Takes the next sample: `lasts`, it was the break; `recovers`, it was none; null: that cannot be told yet. */
  push(timeS: number, force: number): 'lasts' | 'recovers' | null
  /** Time of the last sample before the fall, s. */
  readonly breakS: number
  /** The force that was left afterwards. */
  afterBreak(): number
  /** How long the fall took, s; null: it cannot be told. */
  fallS(): number | null
}

/** After a fall, a load this near the peak again was no break. */
const recoveredShare = 0.9
/** The load before a fall is the mean over this time, s, and samples: the crest of a knock alone is no load. */
const beforeS = 0.1
const beforeSamples = 3
/** Going back from the middle of a fall, it began where a sample is no longer this share of the fall above the next. */
const stillFallingShare = 0.02
/** The load after the break is the mean over this time after the fall, s: ringing has died away, the press is not let back yet. */
const afterFromS = 0.1
const afterToS = 0.3
/** So many samples at least must show it: of a slow device the first may still lie within the fall. */
const leastSamplesAfter = 2

/**
 * Follows a load from the newest sample of `recent` on, at which the fall was noticed. The fall lasts when within
 * postBreakS the load neither comes back to 0.9 of its peak, nor is its mean after the fall above (1 − breakDropShare) of
 * its mean before.
 * `zero`: level at rest; `peak`: highest force, in force as `zero`; `windowS`: over how long the fall was looked for.
 * Checked: tests/domain/signal/loading/fall/fallenLoad.spec.ts.
 */
export function beginFall(
  recent: RecentSamples,
  load: { zero: number; peak: number; windowS: number },
  settings: Pick<DetectionSettings, 'breakDropShare' | 'postBreakS'>,
): FallenLoad {
  const { zero, peak } = load
  const noticedS = recent.timeAt(recent.count() - 1)
  const noticed = recent.forceAt(recent.count() - 1)
  const highest = Math.max(recent.windowHighest(load.windowS), noticed)
  const ordinal = startOfFall(recent, highest, noticed)
  const breakS = recent.timeAt(ordinal)
  const before = recent.meanBefore(ordinal, beforeS, beforeSamples)
  const record = beginFallRecord(recent, ordinal)
  const after = { sum: 0, count: 0, last: noticed, samples: 0 }

  const afterBreak = () => (after.count > 0 ? after.sum / after.count : after.last)

  return {
    push(timeS, force) {
      const sinceS = timeS - noticedS
      after.samples += 1
      after.last = force
      if (sinceS <= afterToS) record.push(timeS, force)
      if (sinceS >= afterFromS && sinceS <= afterToS) {
        after.sum += force
        after.count += 1
      }
      if (force - zero >= recoveredShare * (peak - zero)) return 'recovers'
      if (timeS - breakS < settings.postBreakS || after.samples < leastSamplesAfter) return null
      return afterBreak() - zero >= (1 - settings.breakDropShare) * (before - zero) ? 'recovers' : 'lasts'
    },
    breakS,
    afterBreak,
    fallS: () => record.fallS(zero, before, afterBreak()),
  }
}

/** Ordinal of the last sample before a fall from `highest`, which is in memory, to `lowest`. */
function startOfFall(recent: RecentSamples, highest: number, lowest: number): number {
  let ordinal = recent.lastAtOrAbove((highest + lowest) / 2)
  const falling = stillFallingShare * (highest - lowest)
  while (recent.holds(ordinal - 1) && recent.forceAt(ordinal - 1) - recent.forceAt(ordinal) > falling) ordinal -= 1
  return ordinal
}
