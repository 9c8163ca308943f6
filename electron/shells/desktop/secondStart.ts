// Held by tests/shells/desktop/main.spec.ts.
import { resolve } from 'node:path'
import type { App, Dialog } from 'electron'
import { openOtherArchive } from './tellings.ts'

/** What a second start hands to the first one: the archive that it names, or null. Made absolute here, where its folder is known. */
export const secondStartData = (archive: unknown): { archivePath: string | null } => ({
  archivePath: typeof archive === 'string' ? resolve(archive) : null,
})

/** The archive to change to, or null when the second start named none, or the one that is open. */
export function archiveAskedFor(data: unknown, openPath: string): string | null {
  const named = typeof data === 'object' && data !== null && 'archivePath' in data ? data.archivePath : null
  return typeof named === 'string' && named !== resolve(openPath) ? named : null
}

/** Asks whether to change to another archive, and if so begins anew with that one, once what is open is closed. */
export async function changeArchive(
  archivePath: string,
  { app, dialog }: { app: App; dialog: Pick<Dialog, 'showMessageBox'> },
): Promise<void> {
  const { response } = await dialog.showMessageBox({
    ...openOtherArchive(archivePath),
    type: 'question',
    buttons: ['Open it', 'Stay here'],
    cancelId: 1,
  })
  if (response !== 0) return
  app.relaunch({ args: [...(app.isPackaged ? [] : [app.getAppPath()]), '--archive', archivePath] })
  app.quit()
}
