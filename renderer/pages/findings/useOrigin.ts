// Held by tests/browser/findings/findingsPage.spec.ts.
import { originLines } from '#words/findings/originWords.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import type { FindingsView } from './view.ts'

/** What stands below a figure that is saved: the archive, the day, how torn wood is treated, the data, and whether all was measured. */
export function useOrigin({ found }: Pick<FindingsView, 'found'>, treatment: string): () => string[] {
  const info = useAnswer('app.info', {})
  const simulated = found.blocks.filter((one) => one.simulated).length
  return () =>
    originLines({
      archive: info.value?.archive.path.split(/[\\/]/).at(-1) ?? null,
      instant: new Date().toISOString(),
      treatment,
      dataSha256: found.dataSha256,
      simulated: simulated === 0 ? 'none' : simulated === found.blocks.length ? 'all' : 'some',
    })
}
