import type { EvaluationResult } from '#contract/breaks/evaluation.ts'

/** From when to when a specimen bears the load, by the clock of its curve, s. */
export type LoadedPart = { fromS: number; toS: number }

/**
 * The part of a curve that is compared with others: from its onset to its break, to its peak where it has no break.
 *
 *   from   onset; the start of the curve where none was found
 *   to     the later of break and peak; null where it has neither
 *
 * However curves are aligned, the rest is no part of the comparison, though it is drawn. Before its onset and after its break
 * a specimen bears nothing, while others that were loaded more slowly still climb or climb already: a median over both is
 * the curve of no specimen, and falls where none fell. Aligned at the break, the fall itself would be common to all, but it takes
 * milliseconds, in which a step of the clock makes any two differ by all of their load. A peak that a person picked after
 * the break stands for a specimen that was under load until then.
 * Checked: tests/domain/signal/compare/loadedPart.spec.ts by hand.
 */
export function loadedPart({
  onsetTimeS,
  peakTimeS,
  breakTimeS,
}: Pick<EvaluationResult, 'onsetTimeS' | 'peakTimeS' | 'breakTimeS'>): LoadedPart | null {
  if (peakTimeS === null && breakTimeS === null) return null
  const toS = Math.max(peakTimeS ?? breakTimeS!, breakTimeS ?? peakTimeS!)
  return { fromS: Math.min(onsetTimeS ?? 0, toS), toS }
}
