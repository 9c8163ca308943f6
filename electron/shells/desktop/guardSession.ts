// Held by tests/shells/desktop/main.spec.ts.
import type { Session } from 'electron'
import { isOwnPage } from './pageAddress.ts'
import { noDownload, type Telling } from './tellings.ts'

/** Denies what the page of this program needs no permission for (all but a camera without its sound), and every download that it did not make itself. */
export function guardSession(session: Session, tell: (telling: Telling) => void): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    const types = 'mediaTypes' in details ? details.mediaTypes : undefined
    answer(permission === 'media' && isOwnPage(details.requestingUrl) && details.isMainFrame && isVideoAlone(types))
  })
  session.setPermissionCheckHandler(
    (_contents, permission, _origin, { requestingUrl = '', isMainFrame, mediaType }) =>
      permission === 'media' && isOwnPage(requestingUrl) && isMainFrame && mediaType === 'video',
  )
  session.setDevicePermissionHandler(() => false)
  session.on('will-download', (event, item) => {
    if (isOwnDownload(item.getURL())) return
    event.preventDefault()
    tell(noDownload(item.getURL()))
  })
}

const isVideoAlone = (types: readonly string[] | undefined) => types?.length === 1 && types[0] === 'video'

/** Of our own page, or made by it in memory. */
const isOwnDownload = (address: string) => isOwnPage(address.replace(/^blob:/, ''))
