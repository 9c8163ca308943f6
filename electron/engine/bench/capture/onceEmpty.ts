import type { LiveFrame } from '#contract/bench/bench.ts'
import type { BenchOccupation } from '../benchOccupation.ts'
import type { DeviceLink } from '../device/deviceLink.ts'
import { isEmpty, isFree } from './emptyBench.ts'

/** What is done as soon as nothing is on the cell any more. */
export type OnceEmpty = {
  captureBegan(): void
  captureEnded(isBreak: boolean): void
  /** Preferences or the calibration in force are other ones; what they change waits while weights may hang on the cell. */
  preferencesChanged(): void
  connecting(): void
  frame(frame: LiveFrame): void
}

export type OnceEmptyParts = {
  link(): Pick<DeviceLink, 'signal' | 'facts' | 'preferencesChanged'>
  occupation: Pick<BenchOccupation, 'busyWith' | 'awaitsEmpty' | 'empty'>
  /** The specimen that broke is out of the press. */
  cleared(): void
}

/** Nothing waits yet. */
export function createOnceEmpty({ link, occupation, cleared }: OnceEmptyParts): OnceEmpty {
  let brokenIsIn = false
  let preferencesWait = false
  return {
    captureBegan() {
      brokenIsIn = false
    },
    captureEnded(isBreak) {
      brokenIsIn = isBreak
    },
    preferencesChanged() {
      // A new stretch of the stream takes its zero anew, and there may be weights on the cell now.
      preferencesWait = occupation.busyWith() !== null || occupation.awaitsEmpty()
      if (!preferencesWait) link().preferencesChanged()
    },
    connecting() {
      preferencesWait = false
    },
    frame(frame) {
      const { signal, facts, preferencesChanged } = link()
      const waits = preferencesWait || occupation.awaitsEmpty()
      if (waits && occupation.busyWith() === null && isFree(frame, signal(), facts().settings)) {
        occupation.empty()
        if (preferencesWait) preferencesChanged()
        preferencesWait = false
      }
      if (brokenIsIn && isEmpty(frame, signal())) {
        brokenIsIn = false
        cleared()
      }
    },
  }
}
