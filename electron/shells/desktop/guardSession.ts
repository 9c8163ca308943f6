// Held by tests/shells/desktop/main.spec.ts.
import type { Session } from 'electron'
import { isOwnPage } from './pageAddress.ts'
import { noDownload, type Telling } from './tellings.ts'

/** Denies what the page of this program needs no permission for, and every download that it did not make itself. */
export function guardSession(session: Session, tell: (telling: Telling) => void): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.on('will-download', (event, item) => {
    if (isOwnDownload(item.getURL())) return
    event.preventDefault()
    tell(noDownload(item.getURL()))
  })
}

/** Of our own page, or made by it in memory. */
const isOwnDownload = (address: string) => isOwnPage(address.replace(/^blob:/, ''))
