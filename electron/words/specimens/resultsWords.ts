import type { BenchState } from '#contract/bench/bench.ts'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'

/** That more results than one count for a specimen, short; null: one at most. */
export function resultsWords(results: number): string | null {
  return results > 1 ? `${results} results on this specimen` : null
}

/** What several results on one specimen mean, and what to do; null: there is one at most. */
export function severalResultsWords(results: number): string | null {
  const words = resultsWords(results)
  return words === null
    ? null
    : `${words}, though a joint breaks once. The newest stands for it: set the others aside, or move each to the block it was made of.`
}

/** How a specimen stands without a result: it waits, or its breaks count for nothing. */
export function waitingWords({ timesBroken }: Pick<SpecimenSummary, 'timesBroken'>): string {
  return timesBroken === 0 ? 'waiting' : 'broke, set aside'
}

/** What is asked before a specimen is broken that broke before; `peak` writes its load. */
export function againQuestion(
  { fields, timesBroken }: Pick<SpecimenSummary, 'fields' | 'timesBroken'>,
  last: Pick<BreakSummary, 'breakId' | 'peakN' | 'setAside'> | null,
  peak: (peakN: number | null) => string,
): string {
  const [times, lately, all] = timesBroken === 1 ? ['once', ':', 'both'] : [`${timesBroken} times`, ', last in', 'all']
  const what =
    last === null
      ? ''
      : `${lately} break ${last.breakId}, ${peak(last.peakN)}${last.setAside === null ? '' : ', set aside'}`
  return `Specimen ${fields.number} broke ${times} already${what}. If it breaks again, ${all} results stand beside each other and are marked.`
}

/** What becomes of the next load when the specimen at hand broke before. */
export function brokenAtHandWords({ again, next }: Pick<BenchState, 'again' | 'next'>): string {
  if (again) return 'Broke before: the next load gives a second result.'
  return next === null
    ? 'Broken. The next load counts for no specimen.'
    : `Broken. The next load counts for ${next.fields.number}.`
}
