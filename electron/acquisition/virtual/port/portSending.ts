import type { VirtualAmplifier } from '../virtualAmplifier.ts'
import type { PseudoTerminal } from './pseudoTerminal.ts'

/** The way of an amplifier's lines into the port: what the reader does not take waits, or is lost. */
export type PortSending = {
  /** Sends what is due up to that device time, as far as the reader keeps up. */
  send(deviceS: number): void
  /** Hands over what waits; true when nothing is left. */
  flush(): boolean
  /** What waits will never arrive; a line of which only a part went over is lost as well. */
  losePending(): void
  /** The amplifier goes on to that time, and nobody hears it. */
  loseUntil(deviceS: number): void
  isWaiting(): boolean
  samplesLost(): number
}

const samplesPerBlock = 4096
/** Blocks a turn, as long as the reader keeps up; what it does not take stays and holds time back. */
const mostBlocks = 64
const lineFeed = 10

/** Nothing has been sent. */
export function createPortSending(terminal: Pick<PseudoTerminal, 'write'>, amplifier: VirtualAmplifier): PortSending {
  let pending: Uint8Array = new Uint8Array(0)
  let samplesLost = 0

  function flush(): boolean {
    if (pending.length > 0) pending = pending.subarray(terminal.write(pending))
    return pending.length === 0
  }

  return {
    send(deviceS) {
      for (let block = 0; block < mostBlocks && flush() && !amplifier.over(); block++) {
        const bytes = amplifier.bytesUntil(deviceS, samplesPerBlock)
        if (bytes.length === 0) break
        pending = bytes
      }
    },
    flush,
    losePending() {
      for (const byte of pending) if (byte === lineFeed) samplesLost += 1
      pending = pending.subarray(pending.length)
    },
    loseUntil(deviceS) {
      const before = amplifier.bench.counts().sent
      amplifier.bytesUntil(deviceS)
      samplesLost += amplifier.bench.counts().sent - before
    },
    isWaiting: () => pending.length > 0,
    samplesLost: () => samplesLost,
  }
}
