import type { LineFormatChoice } from '#contract/bench/source.ts'
import { Trouble } from '#contract/errors.ts'
import type { ByteListener, ByteSource } from '../byteSource.ts'
import type { Clock } from '../clock.ts'
import type { LoadingTruth } from './loading/loadingTruth.ts'
import { createVirtualAmplifier, type VirtualAmplifierOptions } from './virtualAmplifier.ts'

export type VirtualSourceOptions = VirtualAmplifierOptions & {
  /** Simulated seconds per second of the clock. */
  speed?: number
  /** The plug is pulled at these device times and put back after `forS`; samples of the time between are lost. */
  unplugs?: readonly { atS: number; forS: number }[]
}

/** The virtual amplifier as a source of bytes, with what a bench knows of its cell. */
export type VirtualSource = ByteSource & {
  readonly capacityN: number
  readonly nPerCount: number
  readonly endCodes: readonly [number, number]
  readonly lineFormat: LineFormatChoice
  /** Loads the next specimen at once, unless one is being loaded or none is left. */
  loadNow(): void
  /** Hangs weights of so many newtons on the cell; 0 takes them off. */
  putWeights(forceN: number): void
  /** The press stands still until it is let go. */
  holdPress(held: boolean): void
  /** What truly happened in the loadings that are over. */
  truths(): readonly LoadingTruth[]
}

/** Serial adapters hand over what they have about this often, s. */
const burstS = 0.015
/** A burst that would hold more than so many samples is cut, and the amplifier falls behind the clock instead. */
const mostSamplesPerBurst = 20_000

/** A virtual amplifier in this process, paced by the clock and sending in bursts as a serial adapter does. */
export function createVirtualSource(options: VirtualSourceOptions, clock: Clock): VirtualSource {
  const speed = options.speed ?? 1
  const amplifier = createVirtualAmplifier(options)
  const { characteristic, endCodes } = amplifier.bench
  const unplugs = [...(options.unplugs ?? [])].sort((a, b) => a.atS - b.atS)
  let listener: ByteListener | null = null
  let cancel: (() => void) | null = null
  let pluggedInAgainS: number | null = null
  let openedS = 0
  let openedAtDeviceS = 0

  function burst(): void {
    cancel = null
    const to = listener
    if (to === null) return
    const deviceS = openedAtDeviceS + (clock.nowS() - openedS) * speed
    if (pluggedInAgainS !== null && deviceS >= pluggedInAgainS) {
      amplifier.bytesUntil(pluggedInAgainS)
      pluggedInAgainS = null
      to.restored()
    }
    const nextUnplug = unplugs[0]
    if (pluggedInAgainS === null && nextUnplug !== undefined && deviceS >= nextUnplug.atS) {
      unplugs.shift()
      give(to, nextUnplug.atS, Number.POSITIVE_INFINITY)
      pluggedInAgainS = nextUnplug.atS + nextUnplug.forS
      to.lost(new Trouble('port-lost', 'The virtual amplifier was unplugged.', 'It comes back by itself.'))
    }
    if (pluggedInAgainS === null) give(to, deviceS, mostSamplesPerBurst)
    if (amplifier.over() && pluggedInAgainS === null) {
      listener = null
      to.ended()
      return
    }
    if (listener !== null) cancel = clock.after(burstS, burst)
  }

  function give(to: ByteListener, deviceS: number, most: number): void {
    const bytes = amplifier.bytesUntil(deviceS, most)
    // What could not be made in time is not caught up later: device time goes on from where it got to.
    const behindS = deviceS - amplifier.givenUntilS()
    if (behindS > 2 / amplifier.bench.rateHz && !amplifier.over()) {
      openedAtDeviceS = amplifier.givenUntilS()
      openedS = clock.nowS()
    }
    if (bytes.length > 0) to.bytes(bytes, clock.nowS())
  }

  return {
    label: `virtual amplifier: ${options.scenario}`,
    capacityN: characteristic.capacityN,
    nPerCount: characteristic.nPerCount,
    endCodes,
    lineFormat: amplifier.lineFormat,
    loadNow: () => amplifier.bench.loadNow(),
    putWeights: (forceN) => amplifier.bench.putWeights(forceN),
    holdPress: (held) => amplifier.bench.holdPress(held),
    truths: () => amplifier.bench.truths,
    async open(newListener) {
      if (listener !== null) throw new RangeError('the virtual source is open already')
      listener = newListener
      openedAtDeviceS = amplifier.givenUntilS()
      openedS = clock.nowS()
      cancel = clock.after(burstS, burst)
    },
    async close() {
      listener = null
      cancel?.()
      cancel = null
    },
  }
}
