import type { Clock } from '../clock.ts'
import type { LoadingTruth } from './loadingTruth.ts'
import { openPseudoTerminal, type PseudoTerminal } from './pseudoTerminal.ts'
import { createVirtualAmplifier, type VirtualAmplifier, type VirtualAmplifierOptions } from './virtualAmplifier.ts'

export type VirtualPortOptions = VirtualAmplifierOptions & {
  /** Simulated seconds per second; null: as fast as the reader takes it. */
  speed?: number | null
  /** What happens while no program has the port open: the bench waits, or samples are lost as on a real wire. */
  unread?: 'wait' | 'lose'
  /** The plug is pulled for good at this device time, s. */
  unplugAtS?: number | null
}

/** What a run sent. All of it was handed over to the reader's port, except what is named lost. */
export type VirtualPortSummary = {
  ending: 'over' | 'unplugged' | 'stopped'
  samplesSent: number
  linesDamaged: number
  samplesDropped: number
  samplesLost: number
  deviceTimeS: number
  truths: readonly LoadingTruth[]
}

export type VirtualPort = {
  readonly path: string
  readonly amplifier: VirtualAmplifier
  /** Settles when the run is over and the reader has left or had time to read all. */
  readonly finished: Promise<VirtualPortSummary>
  loadNow(): void
  /** Ends the run: the port goes away. */
  stop(): void
}

const turnS = 0.005
/** A program that has just opened the port first sets its line; bytes sent meanwhile might be changed or echoed. */
const settingUpS = 0.2
/** Patience with a reader that keeps the port open after the last byte. */
const lingerS = 3
const samplesPerBlock = 4096
const lineFeed = 10

/** The virtual amplifier on a pseudo-terminal, so that any program can open it as a serial port. Waits for the first reader. */
export async function openVirtualPort(
  options: VirtualPortOptions,
  clock: Clock,
  open: () => Promise<PseudoTerminal> = openPseudoTerminal,
): Promise<VirtualPort> {
  const { speed = 1, unread = 'wait', unplugAtS = null } = options
  const terminal = await open()
  const amplifier = createVirtualAmplifier(options)
  const lastS = unplugAtS ?? Number.POSITIVE_INFINITY
  let pending: Uint8Array = new Uint8Array(0)
  let readerSinceS: number | null = null
  let startedS: number | null = null
  let startedAtDeviceS = 0
  let doneS: number | null = null
  let ended = false
  let samplesLost = 0
  let cancel: () => void = () => {}
  let finish: (summary: VirtualPortSummary) => void = () => {}
  const finished = new Promise<VirtualPortSummary>((resolve) => {
    finish = resolve
  })

  /** What is pending will never arrive; a line of which only a part went over is lost as well. */
  function losePending(): void {
    for (const byte of pending) if (byte === lineFeed) samplesLost += 1
    pending = pending.subarray(pending.length)
  }

  function end(ending: VirtualPortSummary['ending']): void {
    if (ended) return
    ended = true
    cancel()
    losePending()
    terminal.close()
    const { sent, dropped } = amplifier.bench.counts()
    finish({
      ending,
      samplesSent: sent - samplesLost,
      linesDamaged: amplifier.lines().damaged,
      samplesDropped: dropped,
      samplesLost,
      deviceTimeS: amplifier.givenUntilS(),
      truths: amplifier.bench.truths,
    })
  }

  /** Hands over what is pending; true when nothing is left. */
  function flush(): boolean {
    if (pending.length > 0) pending = pending.subarray(terminal.write(pending))
    return pending.length === 0
  }

  function restartPace(): void {
    startedS = clock.nowS()
    startedAtDeviceS = amplifier.givenUntilS()
  }

  function dueS(): number {
    return speed === null || startedS === null
      ? lastS
      : Math.min(lastS, startedAtDeviceS + (clock.nowS() - startedS) * speed)
  }

  function loseUntil(deviceS: number): void {
    const before = amplifier.bench.counts().sent
    amplifier.bytesUntil(deviceS)
    samplesLost += amplifier.bench.counts().sent - before
  }

  function send(): void {
    const deviceS = dueS()
    // Several blocks a turn as long as the reader keeps up; what it does not take now stays pending and holds time back.
    for (let block = 0; block < 64 && flush() && !amplifier.over(); block++) {
      const bytes = amplifier.bytesUntil(deviceS, samplesPerBlock)
      if (bytes.length === 0) break
      pending = bytes
    }
  }

  function readerIsReady(nowS: number): boolean {
    if (!terminal.hasReader()) readerSinceS = null
    else readerSinceS ??= nowS
    return readerSinceS !== null && nowS - readerSinceS >= settingUpS
  }

  /** The reader has seen enough of the last loading and left: it is brought to its end, and nobody is waited for. */
  function isLeftInLastLoading(): boolean {
    const { breaks } = options
    if (breaks == null || startedS === null || terminal.hasReader()) return false
    const { truths, loading } = amplifier.bench
    return truths.length >= breaks || (truths.length === breaks - 1 && loading())
  }

  function turn(): void {
    const nowS = clock.nowS()
    if (doneS !== null) {
      if (!terminal.hasReader() || nowS - doneS > lingerS) {
        end('over')
        return
      }
    } else if (!readerIsReady(nowS)) {
      if (isLeftInLastLoading()) {
        losePending()
        loseUntil(dueS())
        if (!amplifier.bench.loading()) {
          end('over')
          return
        }
      } else if (startedS !== null && unread === 'lose') {
        losePending()
        loseUntil(dueS())
      } else startedS = null
    } else {
      if (startedS === null) restartPace()
      send()
      const unplugged = amplifier.givenUntilS() >= lastS
      if (flush() && unplugged) {
        end('unplugged')
        return
      }
    }
    if (doneS === null && amplifier.over() && pending.length === 0) doneS = nowS
    cancel = clock.after(pending.length > 0 ? 0 : turnS, turn)
  }

  cancel = clock.after(0, turn)
  return {
    path: terminal.path,
    amplifier,
    finished,
    loadNow: () => amplifier.bench.loadNow(),
    stop: () => end('stopped'),
  }
}
