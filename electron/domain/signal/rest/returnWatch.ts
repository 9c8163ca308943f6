import type { LoadWatch } from './loadWatch.ts'

/** Tells a force that only comes back to zero from a loading. */
export type ReturnWatch = {
  /** Whether the rise that the watch has noticed, now at `force`, is such a return. */
  isReturn(force: number, watch: Pick<LoadWatch, 'threshold' | 'level'>): boolean
  forget(): void
}

/**
 * A level at rest so many start thresholds below zero is no drift: something was lifted off, or the cell is wired in reverse.
 * Chosen on drawn streams, no source.
 */
const liftedThresholds = 3

/**
 * A rise that only leads back to zero is no load: what was lifted off is put back, or a reversed cell let go.
 * Checked: tests/domain/signal/rest/returnWatch.spec.ts.
 */
export function createReturnWatch(): ReturnWatch {
  let cameBack = false
  return {
    isReturn(force, watch) {
      // Slowly it comes back in several rises, the last of them from a level near zero.
      const least = cameBack ? 1 : liftedThresholds
      cameBack = force <= watch.threshold() && watch.level() < -least * watch.threshold()
      return cameBack
    },
    forget() {
      cameBack = false
    },
  }
}
