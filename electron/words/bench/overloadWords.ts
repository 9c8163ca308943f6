import type { BenchState } from '#contract/bench/bench.ts'

/** What the overload banner says; null when there is nothing to say. */
export function overloadWords(
  bench: Pick<BenchState, 'overload' | 'capacityShare' | 'capacityN'>,
  force: (forceN: number) => string,
): { title: string; advice: string } | null {
  if (bench.overload === 'none') return null
  const share = bench.capacityShare === null ? null : Math.round(bench.capacityShare * 100)
  const of = bench.capacityN === null ? 'the rated load' : `the rated load of ${force(bench.capacityN)}`
  const reached = share === null ? '' : `${share} % of ${of}. `
  if (bench.overload === 'alarm')
    return {
      title: 'Overload. Take the load off now.',
      advice: `${reached}Check the cell and its zero before going on.`,
    }
  return { title: 'Near the rated load', advice: `${reached}Stop loading before 100 %.` }
}
