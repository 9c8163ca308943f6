// Held by tests/browser/findings/findingsPage.spec.ts.
import { resultsAbout } from '#words/findings/originWords.ts'
import { simulatedShare } from '#words/keeping/figureOrigin.ts'
import { useFigureOrigin } from '../../parts/figures/useFigureOrigin.ts'
import type { FindingsView } from './view.ts'

/** What stands below a figure that is saved: how torn wood is treated, the data, and whether all was measured. */
export function useOrigin({ found }: Pick<FindingsView, 'found'>, treatment: string): () => string[] {
  const originOf = useFigureOrigin()
  const simulated = found.blocks.filter((one) => one.simulated).length
  return () => originOf(resultsAbout(treatment, found.dataSha256), simulatedShare(simulated, found.blocks.length))
}
