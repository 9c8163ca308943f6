// Held by tests/browser/archives.spec.ts.
import type { TroubleMessage } from '#contract/errors.ts'
import type { ArchiveChoice } from '#contract/keeping/archive.ts'
import { useAction } from '../../host/useAction.ts'
import { hashOf, type Route } from '../../routes/route.ts'

/** Opens another archive in place of the one that is open. */
export function useArchiveSwitch(): {
  switchTo(to: ArchiveChoice, then: Route): Promise<void>
  pending: boolean
  error: TroubleMessage | null
  dismiss(): void
} {
  const { run, pending, error, dismiss } = useAction('archive.switch')
  async function switchTo(to: ArchiveChoice, then: Route): Promise<void> {
    if ((await run({ to })) === null) return
    // The page begins anew: nothing that it holds belongs to the archive that is open now.
    location.hash = hashOf(then)
    location.reload()
  }
  return { switchTo, pending, error, dismiss }
}
