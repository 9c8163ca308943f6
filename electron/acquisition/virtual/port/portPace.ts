import type { Clock } from '../../clock.ts'

/** How far a virtual device has got by now, in its own time. */
export type PortPace = {
  /** A reader is there: device time goes on from here. */
  start(deviceS: number): void
  /** Nobody reads: device time stands still. */
  halt(): void
  /** It goes on, or was lost, since a reader was there. */
  started(): boolean
  /** Device time up to which samples are due, s. */
  dueS(): number
}

/** `speed` null: as fast as the reader takes it. Nothing is due after `lastS`. */
export function createPortPace(clock: Clock, speed: number | null, lastS: number): PortPace {
  let startedS: number | null = null
  let startedAtDeviceS = 0
  return {
    start(deviceS) {
      if (startedS !== null) return
      startedS = clock.nowS()
      startedAtDeviceS = deviceS
    },
    halt() {
      startedS = null
    },
    started: () => startedS !== null,
    dueS: () =>
      speed === null || startedS === null
        ? lastS
        : Math.min(lastS, startedAtDeviceS + (clock.nowS() - startedS) * speed),
  }
}
