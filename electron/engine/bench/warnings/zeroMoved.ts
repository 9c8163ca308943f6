import type { BenchState } from '#contract/bench/bench.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'

/** Watches whether a zero lies so far from the one before it that a load may have been on the bench. */
export type ZeroMoved = {
  /** A zero was taken: its offset, and the load that would begin a recording, both in the unit of the scale. */
  taken(offset: number, startThreshold: number | null, scale: ForceScale): void
  /** Another device: its zero has nothing to do with the one before. */
  forget(): void
  moved(): BenchState['zeroMoved']
}

/** No zero yet. */
export function createZeroMoved(): ZeroMoved {
  let before: { offset: number; scaleKey: string } | null = null
  let moved: BenchState['zeroMoved'] = null
  return {
    taken(offset, startThreshold, scale) {
      const scaleKey = JSON.stringify(scale)
      const by = before === null || before.scaleKey !== scaleKey ? 0 : offset - before.offset
      const isLoad = startThreshold !== null && Math.abs(by) > startThreshold
      moved = isLoad ? { by, unit: scale.kind === 'none' ? 'counts' : 'N' } : null
      before = { offset, scaleKey }
    },
    forget() {
      before = null
      moved = null
    },
    moved: () => moved,
  }
}
