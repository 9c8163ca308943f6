import { createRecentSamples, type RecentSamples } from '../stream/recentSamples.ts'
import { createSuddenFall } from './fall/suddenFall.ts'
import { createMeanCurve, type MeanCurve, samplesPerMean } from './meanCurve.ts'

/** What is remembered of a loading: its newest samples, and the whole of it as means. Constant memory. */
export type LoadMemory = {
  readonly recent: RecentSamples
  readonly means: Pick<MeanCurve, 'means' | 'firstReachedS'>
  /** Takes samples before the loading; `restfulAt`: index of the last that was no different from rest, −1: none. */
  takeRest(timeS: Float64Array, force: Float64Array, from: number, to: number, restfulAt: number): void
  /** The loading has started: from now on its sudden falls are added up. */
  begin(rest: { zero: number; noise: number; intervalS: number }): void
  /** Takes samples of the loading. */
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** How far the load has come down in sudden steps. */
  suddenlyFallen(): number
}

/** Empty. Checked: tests/domain/signal/loading/loadMemory.spec.ts. */
export function createLoadMemory(): LoadMemory {
  const recent = createRecentSamples()
  const means = createMeanCurve()
  let suddenlyFallen = () => 0

  function take(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    recent.take(timeS, force, from, to)
    means.take(timeS, force, from, to)
  }

  return {
    recent,
    means,
    takeRest(timeS, force, from, to, restfulAt) {
      recent.take(timeS, force, from, to)
      // The means begin at the start of loading, which is known only afterwards: they start anew with every sample at rest.
      if (restfulAt >= 0) means.clear()
      means.take(timeS, force, restfulAt >= 0 ? restfulAt + 1 : from, to)
    },
    begin({ zero, noise, intervalS }) {
      const sudden = createSuddenFall({ zero, noise, samplesPerMean: samplesPerMean(intervalS) })
      suddenlyFallen = sudden.fallen
      means.settle(intervalS, sudden.push)
    },
    take,
    suddenlyFallen: () => suddenlyFallen(),
  }
}
