import type { CurveEvent } from '#contract/breaks/evaluation.ts'

/** An event of a kind and a time, without anything that only some kinds have. */
export const plainEvent = (
  kind: CurveEvent['kind'],
  { startTimeS, endTimeS }: { startTimeS: number; endTimeS: number },
): CurveEvent => ({
  kind,
  startTimeS,
  endTimeS,
  dropN: null,
  dropPercent: null,
  cycles: null,
  fromN: null,
  percentOfPeak: null,
  meanDropN: null,
  leastDropN: null,
  periodS: null,
  manner: null,
})
