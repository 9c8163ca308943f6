import type { Clock } from '../../clock.ts'
import type { LoadingTruth } from '../loading/loadingTruth.ts'
import { createVirtualAmplifier, type VirtualAmplifier, type VirtualAmplifierOptions } from '../virtualAmplifier.ts'
import { createPortPace } from './portPace.ts'
import { createPortSending } from './portSending.ts'
import { openPseudoTerminal, type PseudoTerminal } from './pseudoTerminal.ts'

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
/**
 * Patience with a reader that keeps the port open after the last byte: it may not have taken it yet, and what is unread is lost
 * with the port. Long enough for a reader that a busy machine keeps waiting.
 */
const lingerS = 30

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
  const pace = createPortPace(clock, speed, lastS)
  const sending = createPortSending(terminal, amplifier)
  const readerIsReady = readerWatch(terminal)
  const { promise: finished, resolve: finish } = Promise.withResolvers<VirtualPortSummary>()
  let doneS: number | null = null
  let ended = false
  let cancel: () => void = () => {}

  function end(ending: VirtualPortSummary['ending']): void {
    if (ended) return
    ended = true
    cancel()
    sending.losePending()
    terminal.close()
    const { sent, dropped } = amplifier.bench.counts()
    const samplesLost = sending.samplesLost()
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

  /** The reader has seen enough of the last loading and left: it is brought to its end, and nobody is waited for. */
  function isLeftInLastLoading(): boolean {
    const { breaks } = options
    if (breaks == null || !pace.started() || terminal.hasReader()) return false
    const { truths, loading } = amplifier.bench
    return truths.length >= breaks || (truths.length === breaks - 1 && loading())
  }

  /** Returns how the run has ended; null: it goes on. */
  function turnWithoutReader(): VirtualPortSummary['ending'] | null {
    const isLeft = isLeftInLastLoading()
    if (!isLeft && !(pace.started() && unread === 'lose')) {
      pace.halt()
      return null
    }
    sending.losePending()
    sending.loseUntil(pace.dueS())
    return isLeft && !amplifier.bench.loading() ? 'over' : null
  }

  function turnWithReader(): VirtualPortSummary['ending'] | null {
    pace.start(amplifier.givenUntilS())
    sending.send(pace.dueS())
    const unplugged = amplifier.givenUntilS() >= lastS
    return sending.flush() && unplugged ? 'unplugged' : null
  }

  function turnWhenDone(waitedS: number): VirtualPortSummary['ending'] | null {
    return !terminal.hasReader() || waitedS > lingerS ? 'over' : null
  }

  function turn(): void {
    const nowS = clock.nowS()
    const ending =
      doneS !== null ? turnWhenDone(nowS - doneS) : readerIsReady(nowS) ? turnWithReader() : turnWithoutReader()
    if (ending !== null) {
      end(ending)
      return
    }
    if (doneS === null && amplifier.over() && !sending.isWaiting()) doneS = nowS
    cancel = clock.after(sending.isWaiting() ? 0 : turnS, turn)
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

/** Whether a program has the port open, and has had time to set its line. */
function readerWatch(terminal: Pick<PseudoTerminal, 'hasReader'>): (nowS: number) => boolean {
  let sinceS: number | null = null
  return (nowS) => {
    if (!terminal.hasReader()) sinceS = null
    else sinceS ??= nowS
    return sinceS !== null && nowS - sinceS >= settingUpS
  }
}
