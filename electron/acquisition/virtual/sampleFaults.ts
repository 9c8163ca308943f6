// Held by tests/acquisition/virtual/benchModel.spec.ts.
import type { ScenarioName } from '#contract/bench/source.ts'
import { createRandom } from '#domain/numbers/random.ts'
import type { PressedLoading } from './loading/pressedLoadings.ts'

/** What goes wrong with one sample on its way through the amplifier. */
export type SampleFault = { glitchN: number; lost: boolean }

/** Finds the fault of each sample in turn; a loading's own faults are noted in its truth. */
export type SampleFaults = (sample: number, timeS: number, loading: PressedLoading | null) => SampleFault

const sound: SampleFault = { glitchN: 0, lost: false }

/** Glitches at rest come as often as the scenario says; those of a loading were planned with it. */
export function createSampleFaults(scenario: ScenarioName, seed: number): SampleFaults {
  const chance = createRandom(seed, 2)
  const glitchesPerS = scenario === 'idle' ? 10 / 3600 : scenario === 'glitches' ? 0.1 : 0
  let glitchS = chance.waiting(glitchesPerS)
  return (sample, timeS, loading) => {
    if (loading !== null) return faultOfLoading(sample, timeS, loading)
    if (timeS < glitchS) return sound
    while (timeS >= glitchS) glitchS += chance.waiting(glitchesPerS)
    return { glitchN: chance.between(100, 20_000) * (chance.unit() < 0.5 ? -1 : 1), lost: false }
  }
}

function faultOfLoading(sample: number, timeS: number, { faults, truth, firstSample }: PressedLoading): SampleFault {
  const ordinal = sample - firstSample
  const glitchN = faults.glitches.get(ordinal) ?? 0
  const gap = faults.gaps.find(([from, to]) => ordinal >= from && ordinal < to)
  if (gap === undefined) return glitchN === 0 ? sound : { glitchN, lost: false }
  if (ordinal === gap[0]) truth.gaps.push({ timeS, missing: gap[1] - gap[0] })
  truth.droppedSamples += 1
  return { glitchN, lost: true }
}
