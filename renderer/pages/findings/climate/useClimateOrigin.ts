// Held by tests/browser/findings/climateRun.spec.ts.
import type { ClimateImportSummary } from '#contract/findings/climate.ts'
import type { ClimateOfStore } from '#contract/findings/climateAnswers.ts'
import { readingsAbout } from '#words/findings/climate/climateFigureWords.ts'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'

/** What stands below a figure of a store that is saved: the files that it rests on, and whether anybody measured. */
export function useClimateOrigin(
  { store, simulated }: ClimateOfStore,
  imports: readonly ClimateImportSummary[],
): () => string[] {
  const originOf = useFigureOrigin()
  const files = imports.filter(
    (one) => one.setAside === null && one.storeKind === store.kind && one.store === store.name,
  )
  return () => originOf(readingsAbout(files), simulated ? 'all' : 'none')
}
