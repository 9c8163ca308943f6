import type { Clock } from '#acquisition/clock.ts'

export type Outcome = 'broke' | 'unloaded'

/** How the last capture ended, while the bench says so. */
export type ShownOutcome = {
  /** null: nothing more is said of it. */
  show(outcome: Outcome | null): void
  shown(): Outcome | null
  stop(): void
}

/** How long "broke at ..." stands before the bench says that it waits for the next one, if nothing happens, s. */
const shownForS = 8

/** Nothing has ended yet. */
export function createShownOutcome(clock: Clock, changed: () => void): ShownOutcome {
  let shown: Outcome | null = null
  let callOff: () => void = () => {}

  function show(outcome: Outcome | null): void {
    callOff()
    shown = outcome
    if (outcome !== null) callOff = clock.after(shownForS, () => show(null))
    changed()
  }

  return { show, shown: () => shown, stop: () => callOff() }
}
