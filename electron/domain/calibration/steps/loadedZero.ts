import { Trouble } from '#contract/errors.ts'

/** A zero that is off by more than this share of the lightest load planned may have been read with a weight on. */
const doubtShare = 0.5

/**
 * Whether a reading taken for the zero looks like one under load: it stands for `seenN` by what was known before it, N, and the
 * lightest load that may have been left on is `lightestN`, N. `seenN` null: nothing was known, so nothing speaks against it.
 *
 * Source: common practice, no source. Checked: tests/domain/calibration/steps/loadedZero.spec.ts by hand.
 */
export function looksLoaded(seenN: number | null, lightestN: number): boolean {
  return seenN !== null && Math.abs(seenN) > doubtShare * lightestN
}

/** The question that such a zero raises. `hint`: what to do if a load was on. */
export function loadedZero(hint: string): Trouble {
  return new Trouble('conflict', 'This zero reads as if a weight were still on the cell.', hint)
}
