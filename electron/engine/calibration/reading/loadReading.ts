import type { Clock } from '#acquisition/clock.ts'
import { Trouble } from '#contract/errors.ts'
import { createLoadHold, type HeldReadings, type LoadHold } from './loadHold.ts'
import { type AveragedReading, createSteadyReading, type SteadyReading } from './steadyReading.ts'

export type LoadReadingListener = {
  /** The signal stood still and was averaged. A load that is held goes on hanging after that. */
  read(averaged: AveragedReading): void
  /** The load hung for as long as it was to be held; null: the signal was away when its creep was to be read. */
  held(found: HeldReadings | null): void
  /** All that was to be read of this load is. */
  over(): void
  failed(trouble: Trouble): void
}

/** The reading of one load after the other: waiting until it is steady, averaging, and for one of them holding it. */
export type LoadReading = {
  /** `holdS` null: the load is not held. Throws Trouble `conflict` while another load is read. */
  begin(times: { averageS: number; steadyWithinS: number; holdS: number | null }, listener: LoadReadingListener): void
  push(timeS: number, reading: number): void
  /** Throws Trouble `conflict` while a load is read or held. */
  refuseWhileReading(): void
  /** Gives up what is under way; true: the load had been read and was only held. */
  stop(): boolean
  /** null: nothing is under way. */
  phase(): 'waiting-for-steady' | 'averaging' | 'holding' | null
  live(): ReturnType<SteadyReading['live']>
}

/** What is shown while nothing is averaged. */
export const quietReading = { mean: null, sd: null, count: 0, unsteadyBecause: null, waitedS: 0, averagedShare: 0 }

/** Nothing is under way. */
export function createLoadReading(clock: Clock, changed: () => void): LoadReading {
  let waiting: SteadyReading | null = null
  let hold: LoadHold | null = null
  let listener: LoadReadingListener | null = null

  function endIfHeld(): void {
    if (waiting !== null || listener === null || hold?.over() === false) return
    const ended = { hold, listener }
    hold = null
    listener = null
    if (ended.hold !== null) ended.listener.held(ended.hold.held())
    ended.listener.over()
    changed()
  }

  function stop(): boolean {
    const wasHeld = waiting === null && hold !== null
    waiting?.stop()
    waiting = null
    hold = null
    listener = null
    return wasHeld
  }

  function refuseWhileReading(): void {
    if (waiting !== null) throw readingTaken()
    if (hold !== null)
      throw new Trouble('conflict', 'The load is being held for the creep.', 'Wait until it is over, or stop it first.')
  }

  return {
    begin({ averageS, steadyWithinS, holdS }, heard) {
      refuseWhileReading()
      listener = heard
      hold = holdS === null ? null : createLoadHold(holdS, averageS)
      waiting = createSteadyReading({
        ...{ clock, averageS, steadyWithinS, changed },
        done(averaged) {
          waiting = null
          heard.read(averaged)
          endIfHeld()
        },
        failed(trouble) {
          stop()
          heard.failed(trouble)
          changed()
        },
      })
    },
    push(timeS, reading) {
      hold?.push(timeS, reading)
      waiting?.push(timeS, reading)
      endIfHeld()
    },
    refuseWhileReading,
    stop,
    phase() {
      if (waiting !== null) return waiting.averaging() ? 'averaging' : 'waiting-for-steady'
      return hold === null ? null : 'holding'
    },
    live() {
      if (waiting !== null) return waiting.live()
      return hold === null ? quietReading : { ...quietReading, averagedShare: hold.share() }
    },
  }
}

/** What is said to whoever wants something else while a reading is taken. */
export function readingTaken(): Trouble {
  return new Trouble('conflict', 'A reading is being taken.', 'Wait until it is done, or stop waiting first.')
}
