import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'

/** Tells, once for a device, that its zero does not come: without one no break is caught. */
export type SettlingWatch = {
  /** `because`: why the zero cannot be taken, in words; null: it can, or there is one. */
  look(because: string | null, nowS: number): void
  /** Another device, or a zero that was taken. */
  restart(): void
}

/** So long a bench may take to come to rest, s: a hand, a knock, an amplifier that warms up. Common practice, no source. */
export const settlesWithinS = 10

/** Nothing has been waited for yet. */
export function createSettlingWatch(tell: (trouble: TroubleMessage) => void): SettlingWatch {
  let sinceS: number | null = null
  let told = false
  return {
    look(because, nowS) {
      if (because === null) sinceS = null
      else sinceS ??= nowS
      if (told || because === null || sinceS === null || nowS - sinceS < settlesWithinS) return
      told = true
      tell(
        troubleFrom(
          new Trouble(
            'not-stable',
            `The zero has not been taken for ${settlesWithinS} seconds: ${because}.`,
            'No break is recorded before there is a zero. Take the load off, keep hands off the bench, and look at the wires of the load cell.',
          ),
        ),
      )
    },
    restart() {
      sinceS = null
      told = false
    },
  }
}
