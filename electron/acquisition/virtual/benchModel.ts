import type { ScenarioName } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { createDisturbances, type DisturbanceOptions } from './disturbances.ts'
import { type Faults, planGaps, planGlitches } from './faults.ts'
import { createHungWeights } from './hungWeights.ts'
import type { LoadingKind, LoadingPlan } from './loadingPlan.ts'
import { beginTruth, type LoadingTruth, noteSample } from './loadingTruth.ts'
import { forceAt, type LoadSegment } from './loadSegment.ts'
import { planLoading } from './planLoading.ts'
import { drawSpecimen, type VirtualSpecimen } from './specimen.ts'
import { type Characteristic, readingCounts, straightCharacteristic } from './transferCharacteristic.ts'

export type BenchModelOptions = Partial<Omit<DisturbanceOptions, 'seed'>> & {
  scenario: ScenarioName
  rateHz: number
  seed: number
  /** Loadings until the bench stands still for good; null: goes on for ever. */
  breaks?: number | null
  /** Rest before each loading is drawn from this range, s. */
  restS?: readonly [number, number]
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

const mixture: readonly LoadingKind[] = [
  'brittle',
  'brittle',
  'hand-pumped',
  'progressive',
  'pop-in',
  'stick-slip',
  'unloading',
  'glitches',
  'gaps',
]

const narrowConverter = [-524_288, 524_287] as const
const wideConverter = [-8_388_608, 8_388_607] as const
/** A block this strong certainly drives the narrow converter to its end code. */
const clippingStrengthMPa = 9
const restAfterLastS = 4
const restAfterWeightsS = 3
/** With less than this on it the cell counts as free again, N. */
const freeN = 0.05

/** Lowest and highest code of the converter that a scenario is played with. */
function endCodesOf(scenario: ScenarioName): readonly [number, number] {
  return scenario === 'clipping' ? narrowConverter : wideConverter
}

const rest: LoadSegment = {
  startS: 0,
  durationS: Number.POSITIVE_INFINITY,
  c0: 0,
  c1: 0,
  c2: 0,
  c3: 0,
  fallN: 0,
  fallS: 1,
  ringN: 0,
  ringS: 1,
  ringHz: 0,
}

type Loading = {
  plan: LoadingPlan
  faults: Faults
  truth: LoadingTruth
  firstSample: number
  segment: number
  zeroN: number
}

/**
 * A bench with press, load cell and amplifier, loading one glued block after another. Seeded: the same options give the
 * same samples, however they are asked for. What is drawn for a specimen does not depend on the sample rate.
 */
export function createBenchModel(options: BenchModelOptions): BenchModel {
  const { scenario, rateHz, seed, breaks = null, restS = [3, 6], endS = Number.POSITIVE_INFINITY } = options
  if (!(rateHz >= 5 && rateHz <= 10_000)) throw new RangeError('createBenchModel requires a rate from 5 Hz to 10 kHz')
  const characteristic = options.characteristic ?? straightCharacteristic
  const { zeroCounts, nPerCount } = characteristic
  const endCodes = endCodesOf(scenario)
  const settledShare = 1 - Math.exp(-1 / (rateHz * (options.settlingS ?? 0.25 / rateHz)))
  const noiseN = options.noiseN ?? 1
  const disturbances = createDisturbances({
    seed,
    noiseN,
    humN: options.humN ?? 0.2,
    driftN: options.driftN ?? 2,
    knocksPerHour: options.knocksPerHour ?? 30,
  })
  const specimens = createRandom(seed, 1)
  const restGlitches = createRandom(seed, 2)
  const truths: LoadingTruth[] = []

  let sample = 0
  let sent = 0
  let dropped = 0
  let settledN = 0
  let highestN = 0
  let segment = rest
  let segmentEndS = Number.POSITIVE_INFINITY
  let loading: Loading | null = null
  let nextLoadingS = scenario === 'idle' || breaks === 0 ? Number.POSITIVE_INFINITY : specimens.between(...restS)
  let streamEndS = breaks === 0 ? Math.min(endS, restAfterLastS) : endS
  const restGlitchesPerS = scenario === 'idle' ? 10 / 3600 : scenario === 'glitches' ? 0.1 : 0
  const weights = createHungWeights()
  let pressHeld = false
  let restGlitchS = restGlitches.waiting(restGlitchesPerS)

  function startLoading(startS: number): void {
    const kind =
      scenario === 'mixed' ? mixture[specimens.wholeBetween(0, mixture.length - 1)]! : (scenario as LoadingKind)
    const number = truths.length + 1
    const chance = createRandom(seed, 1000 + 2 * number)
    const drawn = drawSpecimen(chance, kind === 'clipping' ? clippingStrengthMPa : undefined)
    const specimen = options.specimen?.(drawn, number) ?? drawn
    const plan = planLoading(kind, specimen, chance)
    // The rate decides which samples a fault falls on, so faults draw from their own stream.
    const faulty = createRandom(seed, 1001 + 2 * number)
    const faults: Faults = {
      glitches: kind === 'glitches' ? planGlitches(plan, rateHz, faulty) : new Map(),
      gaps: kind === 'gaps' ? planGaps(plan, rateHz, faulty) : [],
    }
    const truth = beginTruth(number, kind, specimen, plan, startS, noiseN)
    loading = { plan, faults, truth, firstSample: sample, segment: 0, zeroN: disturbances.driftN() }
    enterSegment(loading, startS)
  }

  function enterSegment(current: Loading, startS: number): void {
    segment = { ...current.plan.segments[current.segment]! }
    segment.startS += startS
    segmentEndS = segment.startS + segment.durationS
  }

  function finishLoading(current: Loading): void {
    const { truth } = current
    const peakSample = Math.floor((truth.peakTimeS - truth.onsetTimeS) * rateHz)
    truth.gapAtPeak = current.faults.gaps.some(([from, to]) => from <= peakSample + 1 && to > peakSample)
    if (truth.highestSampleCounts !== null)
      truth.highestSampleN = (truth.highestSampleCounts - zeroCounts) * nPerCount - current.zeroN
    truths.push(truth)
    loading = null
    segment = rest
    segmentEndS = Number.POSITIVE_INFINITY
    highestN = 0
    if (breaks !== null && truths.length >= breaks) streamEndS = Math.min(streamEndS, truth.endTimeS + restAfterLastS)
    else nextLoadingS = truth.endTimeS + specimens.between(...restS)
  }

  /** Moves press and specimen on to a time. */
  function moveTo(timeS: number): void {
    if (loading === null && (pressHeld || weights.hang())) {
      // Whoever has hung weights or holds the press gives it back with time to spare.
      nextLoadingS = Math.max(nextLoadingS, timeS + restAfterWeightsS)
    } else if (loading === null && timeS >= nextLoadingS) {
      const startS = nextLoadingS
      nextLoadingS = Number.POSITIVE_INFINITY
      startLoading(startS)
    }
    while (loading !== null && timeS >= segmentEndS) {
      loading.segment += 1
      if (loading.segment >= loading.plan.segments.length) finishLoading(loading)
      else enterSegment(loading, loading.truth.onsetTimeS)
    }
  }

  function restGlitchN(timeS: number): number {
    while (timeS >= restGlitchS) restGlitchS += restGlitches.waiting(restGlitchesPerS)
    return restGlitches.between(100, 20_000) * (restGlitches.unit() < 0.5 ? -1 : 1)
  }

  function fill(samples: BenchSamples, untilS = Number.POSITIVE_INFINITY): number {
    const capacity = samples.counts.length
    let written = 0
    while (written < capacity) {
      const timeS = sample / rateHz
      if (timeS >= streamEndS || timeS >= untilS) break
      moveTo(timeS)
      const forceN = forceAt(segment, timeS - segment.startS || 0) + weights.forceN(timeS)
      settledN += settledShare * (forceN - settledN)
      if (loading === null && settledN < freeN) highestN = 0
      if (settledN > highestN) highestN = settledN
      const indicated = settledN + disturbances.at(timeS) + disturbances.noise()
      let glitchN = 0
      let lost = false
      if (loading !== null) {
        const ordinal = sample - loading.firstSample
        glitchN = loading.faults.glitches.get(ordinal) ?? 0
        const gap = loading.faults.gaps.find(([from, to]) => ordinal >= from && ordinal < to)
        if (gap !== undefined) {
          lost = true
          if (ordinal === gap[0]) loading.truth.gaps.push({ timeS, missing: gap[1] - gap[0] })
          loading.truth.droppedSamples += 1
        }
      } else if (timeS >= restGlitchS) glitchN = restGlitchN(timeS)
      const exact = Math.round(readingCounts(characteristic, indicated + glitchN, highestN))
      const counts = Math.max(endCodes[0], Math.min(endCodes[1], exact))
      const sequence = sample
      sample += 1
      if (lost) {
        dropped += 1
        continue
      }
      sent += 1
      samples.timeUs[written] = Math.round(timeS * 1e6)
      samples.counts[written] = counts
      samples.sequence[written] = sequence
      written += 1
      if (loading !== null) noteSample(loading.truth, timeS, counts, glitchN !== 0, counts !== exact)
    }
    return written
  }

  return {
    rateHz,
    characteristic,
    endCodes,
    fill,
    over: () => sample / rateHz >= streamEndS,
    loadNow() {
      if (loading === null && nextLoadingS !== Number.POSITIVE_INFINITY)
        nextLoadingS = Math.min(nextLoadingS, sample / rateHz)
    },
    loading: () => loading !== null,
    putWeights(forceN) {
      if (loading === null) weights.put(sample / rateHz, forceN)
    },
    holdPress(held) {
      pressHeld = held
    },
    truths,
    counts: () => ({ sent, dropped }),
  }
}
