import type { LoadingPlan } from './loadingPlan.ts'
import { LoadBuilder } from './loadSegment.ts'
import type { VirtualSpecimen } from './specimen.ts'

/** A loading while it is planned, move by move. */
export type PlannedLoading = Omit<LoadingPlan, 'segments' | 'durationS' | 'stickSlip' | 'meanRateNPerS'> & {
  load: LoadBuilder
  /** Falls of a stick-slip, in order of time. */
  slips: LoadingPlan['popIns']
}

/** Nothing has happened yet; a peak that nothing lowers is the strength. */
export function beginLoading({ strengthN }: VirtualSpecimen): PlannedLoading {
  return {
    load: new LoadBuilder(),
    outcome: 'break',
    peakN: strengthN,
    peakTimeS: 0,
    breakTimeS: null,
    afterBreakN: null,
    loadingRateNPerS: 0,
    seatingEndS: 0,
    popIns: [],
    slips: [],
    highs: [],
    holds: [],
    reloads: [],
    plateau: null,
    finalDrop: null,
  }
}
