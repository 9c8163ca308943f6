import type { LoadingKind } from '#acquisition/virtual/loading/loadingPlan.ts'
import type { LoadingTruth } from '#acquisition/virtual/loading/loadingTruth.ts'
import type { CurveEvent, EvaluationResult } from '#contract/breaks/evaluation.ts'
import { runBench } from './corpus.ts'

/** What was read from one curve of the virtual bench, its times counted from the stream's first sample as those of the truth. */
export type ReadCurve = {
  where: string
  kind: LoadingKind
  rateHz: number
  noiseShare: number
  truth: LoadingTruth
  result: EvaluationResult
  firstTimeS: number
}

/** The corpus of the course: every kind at every rate and noise, with blocks of strengths from 2.5 kN to 9 kN. */
export function readCorpus(
  kinds: readonly LoadingKind[],
  rates: readonly number[],
  noiseShares: readonly number[],
  seeds: number,
): ReadCurve[] {
  const curves: ReadCurve[] = []
  for (const kind of kinds)
    for (const rateHz of rates)
      for (const noiseShare of noiseShares)
        for (let seed = 1; seed <= seeds; seed++) {
          const strengthN = 2500 + ((seed * 1300 + rateHz * 7) % 6500)
          const run = runBench({
            scenario: kind,
            rateHz,
            // No two curves have their noise in common.
            seed: 7919 * (1 + curves.length) + seed + kind.length,
            breaks: 1,
            noiseN: noiseShare * strengthN,
            knocksPerHour: 0,
            specimen: (drawn) => ({ ...drawn, strengthN, strengthMPa: strengthN / drawn.areaMm2 }),
          })
          const where = `${kind} ${rateHz} Hz noise ${100 * noiseShare} % seed ${seed}`
          const [truth] = run.truths
          const [captured, another] = run.captures
          if (truth === undefined || captured === undefined || another !== undefined)
            throw new Error(`${where}: ${run.captures.length} captures of one loading`)
          curves.push({ where, kind, rateHz, noiseShare, truth, ...captured })
        }
  return curves
}

export const eventsOf = ({ result }: ReadCurve, kind: CurveEvent['kind']): CurveEvent[] =>
  result.events.filter((event) => event.kind === kind)
