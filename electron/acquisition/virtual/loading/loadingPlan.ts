import type { ScenarioName } from '#contract/bench/source.ts'
import type { LoadHigh } from './loadingMoves.ts'
import type { LoadSegment } from './loadSegment.ts'

/** What a specimen does; `mixed` and `idle` are benches, not behaviours. */
export type LoadingKind = Exclude<ScenarioName, 'idle' | 'mixed'>

/** The whole loading of one specimen: its stretches, and what truly happened in it. Times in s from first contact, forces in N. */
export type LoadingPlan = {
  segments: readonly LoadSegment[]
  durationS: number
  outcome: 'break' | 'unloading'
  peakN: number
  peakTimeS: number
  /** Start of the final fracture; null when there was none. */
  breakTimeS: number | null
  /** Load that stays right after the final fracture; null when there was none. */
  afterBreakN: number | null
  /** Slope of the load just before the peak, N/s. */
  loadingRateNPerS: number
  /** Slack taken up until here. */
  seatingEndS: number
  popIns: { timeS: number; fromN: number; dropN: number }[]
  stickSlip: { cycles: number; drops: { timeS: number; fromN: number; dropN: number }[] }
  /** Slope of the straight line from where the load first reaches 10 % of the peak to where it first reaches 90 %. */
  meanRateNPerS: number
  /** In order of time; the last one is where the specimen failed or was let go from. */
  highs: LoadHigh[]
  /** The press stood still and was then driven on. */
  holds: { timeS: number; endTimeS: number; fromN: number; relaxedN: number }[]
  /** The press was let back slowly and then driven on. */
  reloads: { timeS: number; lowestTimeS: number; fromN: number; lowestN: number }[]
  /** The load all but stood still while the specimen gave way, until it failed. */
  plateau: { timeS: number; endTimeS: number } | null
  /** The fall of the failure: how many steps before the last, clean fracture; from the first of them to the end of that. */
  finalDrop: { manner: 'brittle' | 'progressive'; steps: number; timeS: number; lengthS: number } | null
}
