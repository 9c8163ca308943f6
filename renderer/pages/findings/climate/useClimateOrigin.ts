// Held by tests/browser/findings/climateRun.spec.ts.
import type { ClimateImportSummary } from '#contract/findings/climate.ts'
import type { ClimateOfStore } from '#contract/findings/climateAnswers.ts'
import { climateOriginLines } from '#words/findings/climate/climateFigureWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'

/** What stands below a figure of a store that is saved: the archive, the day, the files that it rests on, and whether all was measured. */
export function useClimateOrigin(
  { store, simulated }: ClimateOfStore,
  imports: readonly ClimateImportSummary[],
): () => string[] {
  const info = useAnswer('app.info', {})
  return () =>
    climateOriginLines({
      archive: info.value?.archive.path.split(/[\\/]/).at(-1) ?? null,
      instant: new Date().toISOString(),
      files: imports.filter((one) => one.setAside === null && one.storeKind === store.kind && one.store === store.name),
      simulated,
    })
}
