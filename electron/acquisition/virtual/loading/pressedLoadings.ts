// Held by tests/acquisition/virtual/benchModel.spec.ts.
import type { ScenarioName } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'
import { type Faults, planGaps, planGlitches } from '../faults.ts'
import type { LoadingKind, LoadingPlan } from './loadingPlan.ts'
import { beginTruth, type LoadingTruth } from './loadingTruth.ts'
import { forceAt, type LoadSegment } from './loadSegment.ts'
import { planLoading } from './planLoading.ts'
import { drawSpecimen, type VirtualSpecimen } from './specimen.ts'

/** One specimen in the virtual press. */
export type PressedLoading = {
  plan: LoadingPlan
  faults: Faults
  truth: LoadingTruth
  firstSample: number
  /** What the cell stood at when it began, N. */
  zeroN: number
}

export type PressedLoadingsOptions = {
  scenario: ScenarioName
  rateHz: number
  seed: number
  breaks: number | null
  restS: readonly [number, number]
  /** False: a specimen is loaded only when that is asked for. */
  byItself: boolean
  endS: number
  noiseN: number
  specimen?: ((drawn: VirtualSpecimen, number: number) => VirtualSpecimen) | undefined
  driftN(): number
  /** Weights hang on the cell, or somebody holds the press: no specimen is loaded. */
  heldBack(): boolean
  finished(loading: PressedLoading): void
}

/** One glued block after the other in the virtual press. */
export type PressedLoadings = {
  /** Moves press and specimen on to the time of a sample. */
  moveTo(timeS: number, sample: number): void
  /** null: no specimen is being loaded. */
  current(): PressedLoading | null
  /** Force of press and specimen on the cell, N. */
  forceN(timeS: number): number
  /** The next specimen is loaded at that time, unless one is being loaded or none will be. */
  loadAt(timeS: number): void
  streamEndS(): number
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

/** A block this strong certainly drives the narrow converter to its end code. */
const clippingStrengthMPa = 9
const restAfterLastS = 4
const restAfterWeightsS = 3

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

/** The press stands still until the first rest is over. */
export function createPressedLoadings(options: PressedLoadingsOptions): PressedLoadings {
  const { scenario, seed, breaks, restS, endS, byItself } = options
  const specimens = createRandom(seed, 1)
  const never = scenario === 'idle' || breaks === 0
  let segment = rest
  let segmentAt = 0
  let loading: PressedLoading | null = null
  let loaded = 0
  // Not infinity, which says that none will ever be loaded.
  const whenRested = (fromS: number) => {
    const restedS = fromS + specimens.between(...restS)
    return byItself ? restedS : Number.MAX_VALUE
  }
  let nextLoadingS = never ? Number.POSITIVE_INFINITY : whenRested(0)
  let streamEndS = breaks === 0 ? Math.min(endS, restAfterLastS) : endS

  function start(startS: number, sample: number): void {
    const kind =
      scenario === 'mixed' ? mixture[specimens.wholeBetween(0, mixture.length - 1)]! : (scenario as LoadingKind)
    loading = pressedLoading(options, kind, loaded + 1, startS, sample)
    enter(loading, 0)
  }

  function enter({ plan, truth }: PressedLoading, at: number): void {
    segmentAt = at
    segment = { ...plan.segments[at]! }
    segment.startS += truth.onsetTimeS
  }

  function finish(ended: PressedLoading): void {
    loading = null
    loaded += 1
    segment = rest
    options.finished(ended)
    const { endTimeS } = ended.truth
    if (breaks !== null && loaded >= breaks) streamEndS = Math.min(streamEndS, endTimeS + restAfterLastS)
    else nextLoadingS = whenRested(endTimeS)
  }

  return {
    moveTo(timeS, sample) {
      if (loading === null && options.heldBack()) {
        // Whoever has hung weights or holds the press gives it back with time to spare.
        nextLoadingS = Math.max(nextLoadingS, timeS + restAfterWeightsS)
      } else if (loading === null && timeS >= nextLoadingS) {
        const startS = nextLoadingS
        nextLoadingS = Number.POSITIVE_INFINITY
        start(startS, sample)
      }
      while (loading !== null && timeS >= segment.startS + segment.durationS)
        if (segmentAt + 1 >= loading.plan.segments.length) finish(loading)
        else enter(loading, segmentAt + 1)
    },
    current: () => loading,
    forceN: (timeS) => forceAt(segment, timeS - segment.startS || 0),
    loadAt(timeS) {
      if (loading === null && nextLoadingS !== Number.POSITIVE_INFINITY) nextLoadingS = Math.min(nextLoadingS, timeS)
    },
    streamEndS: () => streamEndS,
  }
}

/** Draws a specimen and plans how it is loaded and what goes wrong meanwhile; nothing of it depends on the sample rate but the faults. */
function pressedLoading(
  { seed, rateHz, noiseN, specimen: chosen, driftN }: PressedLoadingsOptions,
  kind: LoadingKind,
  number: number,
  startS: number,
  firstSample: number,
): PressedLoading {
  const chance = createRandom(seed, 1000 + 2 * number)
  const drawn = drawSpecimen(chance, kind === 'clipping' ? clippingStrengthMPa : undefined)
  const specimen = chosen?.(drawn, number) ?? drawn
  const plan = planLoading(kind, specimen, chance)
  // The rate decides which samples a fault falls on, so faults draw from their own stream.
  const faulty = createRandom(seed, 1001 + 2 * number)
  const faults: Faults = {
    glitches: kind === 'glitches' ? planGlitches(plan, rateHz, faulty) : new Map(),
    gaps: kind === 'gaps' ? planGaps(plan, rateHz, faulty) : [],
  }
  return { plan, faults, truth: beginTruth(number, kind, specimen, plan, startS, noiseN), firstSample, zeroN: driftN() }
}
