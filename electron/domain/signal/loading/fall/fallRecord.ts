import type { RecentSamples } from '../../stream/recentSamples.ts'

/** The raw samples of a fall, from shortly before it, kept to tell how long it took. */
export type FallRecord = {
  push(timeS: number, force: number): void
  /**
   * Time of a fall from `before` to `after`, both above `zero`, s: from the last sample at or above 90 % of the load before to
   * the first at or below 10 % of the fall above the load after. null: no such samples were kept.
   */
  fallS(zero: number, before: number, after: number): number | null
}

/** So many samples are kept at most; 0.8 s at 10 kHz. */
const capacity = 8192
/** It begins so many samples before the fall does: noise or ringing may hold the last of them down. */
const samplesBefore = 8
const highShare = 0.9
const lowShare = 0.1

/** Starts with what `recent` holds from shortly before the sample `ordinal` on. Checked: tests/domain/signal/loading/fall/fallRecord.spec.ts. */
export function beginFallRecord(recent: RecentSamples, ordinal: number): FallRecord {
  const times: number[] = []
  const forces: number[] = []
  for (let i = Math.max(0, ordinal - samplesBefore); i < recent.count(); i++)
    if (recent.holds(i)) {
      times.push(recent.timeAt(i))
      forces.push(recent.forceAt(i))
    }

  return {
    push(timeS, force) {
      if (times.length === capacity) return
      times.push(timeS)
      forces.push(force)
    },
    fallS(zero, before, after) {
      const down = forces.findIndex((force) => force <= after + lowShare * (before - after))
      let high = down
      while (high >= 0 && forces[high]! - zero < highShare * (before - zero)) high -= 1
      return high < 0 ? null : times[down]! - times[high]!
    },
  }
}
