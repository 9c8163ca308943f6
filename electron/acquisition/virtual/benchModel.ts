import type { ScenarioName } from '#contract/bench/source.ts'
import { createDisturbances, type DisturbanceOptions } from './disturbances.ts'
import { createHungWeights } from './hungWeights.ts'
import { type LoadingTruth, noteSample } from './loading/loadingTruth.ts'
import { createPressedLoadings, type PressedLoading } from './loading/pressedLoadings.ts'
import type { VirtualSpecimen } from './loading/specimen.ts'
import { createSampleFaults } from './sampleFaults.ts'
import { type Characteristic, readingCounts, straightCharacteristic } from './transferCharacteristic.ts'

export type BenchModelOptions = Partial<Omit<DisturbanceOptions, 'seed'>> & {
  scenario: ScenarioName
  rateHz: number
  seed: number
  /** Loadings until the bench stands still for good; null: goes on for ever. */
  breaks?: number | null
  /** Rest before each loading is drawn from this range, s. */
  restS?: readonly [number, number]
  /** False: a specimen is loaded only when that is asked for. */
  byItself?: boolean
  /** The stream ends at this device time at the latest, s. */
  endS?: number
  characteristic?: Characteristic
  /** Changes what was drawn for a specimen (1, 2, ...), when a study wants blocks of its own. */
  specimen?: (drawn: VirtualSpecimen, number: number) => VirtualSpecimen
  /** Time constant of the converter's settling (first order), s. */
  settlingS?: number
}

/** Samples in the caller's arrays, all of one length: device time, counts, running number. Lost samples are not in it. */
export type BenchSamples = { timeUs: Float64Array; counts: Float64Array; sequence: Float64Array }

export type BenchModel = {
  readonly rateHz: number
  readonly characteristic: Characteristic
  /** Lowest and highest code of the converter. */
  readonly endCodes: readonly [number, number]
  /** Writes the next samples (of before `untilS`, if given) and returns how many; fewer than fit only when there are no more. */
  fill(samples: BenchSamples, untilS?: number): number
  /** The stream has ended: no sample will ever come again. */
  over(): boolean
  /** The next specimen is loaded at once, unless one is being loaded. */
  loadNow(): void
  loading(): boolean
  /** Hangs weights of so many newtons on the cell instead of those that hang there; 0 takes them off. No specimen is loaded meanwhile. */
  putWeights(forceN: number): void
  /** Nobody turns the press until it is let go: no specimen is loaded. */
  holdPress(held: boolean): void
  /** Loadings that are over, in order. */
  readonly truths: readonly LoadingTruth[]
  counts(): { sent: number; dropped: number }
}

const narrowConverter = [-524_288, 524_287] as const
const wideConverter = [-8_388_608, 8_388_607] as const
/** With less than this on it the cell counts as free again, N. */
const freeN = 0.05

/** Lowest and highest code of the converter that a scenario is played with. */
function endCodesOf(scenario: ScenarioName): readonly [number, number] {
  return scenario === 'clipping' ? narrowConverter : wideConverter
}

/**
 * A bench with press, load cell and amplifier, loading one glued block after another. Seeded: the same options give the
 * same samples, however they are asked for. What is drawn for a specimen does not depend on the sample rate.
 */
export function createBenchModel(options: BenchModelOptions): BenchModel {
  const { scenario, rateHz, seed, breaks = null, restS = [3, 6], endS = Number.POSITIVE_INFINITY } = options
  const { noiseN = 1, humN = 0.2, driftN = 2, knocksPerHour = 30 } = options
  if (!(rateHz >= 5 && rateHz <= 10_000)) throw new RangeError('createBenchModel requires a rate from 5 Hz to 10 kHz')
  const characteristic = options.characteristic ?? straightCharacteristic
  const endCodes = endCodesOf(scenario)
  const settledShare = 1 - Math.exp(-1 / (rateHz * (options.settlingS ?? 0.25 / rateHz)))
  const disturbances = createDisturbances({ seed, noiseN, humN, driftN, knocksPerHour })
  const weights = createHungWeights()
  const faultOf = createSampleFaults(scenario, seed)
  const truths: LoadingTruth[] = []
  let pressHeld = false
  const loadings = createPressedLoadings({
    ...{ scenario, rateHz, seed, breaks, restS, endS, noiseN, specimen: options.specimen },
    byItself: options.byItself ?? true,
    driftN: disturbances.driftN,
    heldBack: () => pressHeld || weights.hang(),
    finished(loading) {
      truths.push(wholeTruth(loading, rateHz, characteristic))
      highestN = 0
    },
  })
  let sample = 0
  let sent = 0
  let dropped = 0
  let settledN = 0
  let highestN = 0

  /** What the cell is under at that time, as the amplifier sees it, N. */
  function indicatedN(timeS: number, loading: PressedLoading | null): number {
    const forceN = loadings.forceN(timeS) + weights.forceN(timeS)
    settledN += settledShare * (forceN - settledN)
    if (loading === null && settledN < freeN) highestN = 0
    if (settledN > highestN) highestN = settledN
    return settledN + disturbances.at(timeS) + disturbances.noise()
  }

  /** Writes the sample of that time, and says whether it left the amplifier. */
  function fillOne(samples: BenchSamples, at: number, timeS: number): boolean {
    loadings.moveTo(timeS, sample)
    const loading = loadings.current()
    const indicated = indicatedN(timeS, loading)
    const { glitchN, lost } = faultOf(sample, timeS, loading)
    if (lost) return false
    const exact = Math.round(readingCounts(characteristic, indicated + glitchN, highestN))
    const counts = Math.max(endCodes[0], Math.min(endCodes[1], exact))
    samples.timeUs[at] = Math.round(timeS * 1e6)
    samples.counts[at] = counts
    samples.sequence[at] = sample
    if (loading !== null) noteSample(loading.truth, timeS, counts, glitchN !== 0, counts !== exact)
    return true
  }

  return {
    rateHz,
    characteristic,
    endCodes,
    fill(samples, untilS = Number.POSITIVE_INFINITY) {
      let written = 0
      for (; written < samples.counts.length; sample++) {
        const timeS = sample / rateHz
        if (timeS >= loadings.streamEndS() || timeS >= untilS) break
        if (fillOne(samples, written, timeS)) written += 1
        else dropped += 1
      }
      sent += written
      return written
    },
    over: () => sample / rateHz >= loadings.streamEndS(),
    loadNow: () => loadings.loadAt(sample / rateHz),
    loading: () => loadings.current() !== null,
    putWeights(forceN) {
      if (loadings.current() === null) weights.put(sample / rateHz, forceN)
    },
    holdPress(held) {
      pressHeld = held
    },
    truths,
    counts: () => ({ sent, dropped }),
  }
}

/** What happened in a loading, with what only its samples tell. */
function wholeTruth(
  { truth, faults, zeroN }: PressedLoading,
  rateHz: number,
  { zeroCounts, nPerCount }: Characteristic,
): LoadingTruth {
  const peakSample = Math.floor((truth.peakTimeS - truth.onsetTimeS) * rateHz)
  truth.gapAtPeak = faults.gaps.some(([from, to]) => from <= peakSample + 1 && to > peakSample)
  if (truth.highestSampleCounts !== null)
    truth.highestSampleN = (truth.highestSampleCounts - zeroCounts) * nPerCount - zeroN
  return truth
}
