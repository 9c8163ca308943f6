import type { RandomStream } from '#domain/numbers/random.ts'
import { breakFinally } from './finalFracture.ts'
import { beginLoading, type PlannedLoading } from './loadingDraft.ts'
import { loadByKind } from './loadingKinds.ts'
import type { LoadingKind, LoadingPlan } from './loadingPlan.ts'
import { meanRate } from './meanRate.ts'
import type { VirtualSpecimen } from './specimen.ts'

/** Plans how one specimen of a kind is loaded, drawing what is left to chance. */
export function planLoading(kind: LoadingKind, specimen: VirtualSpecimen, random: RandomStream): LoadingPlan {
  const planned: PlannedLoading = beginLoading(specimen)
  loadByKind[kind](planned, specimen, random)
  if (planned.outcome === 'break') breakFinally(kind, planned, specimen, random)
  const { load, slips, ...found } = planned
  return {
    ...found,
    segments: load.segments,
    durationS: load.timeS,
    stickSlip: { cycles: slips.length, drops: slips },
    meanRateNPerS: meanRate(load.segments, planned.peakN),
  }
}
