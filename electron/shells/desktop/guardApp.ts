import type { App } from 'electron'
import { noCertificate, type Telling } from './tellings.ts'

/** The program asks nothing of the network: a certificate that does not hold, or a server that wants to know who asks, gets nothing. */
export function guardApp(app: App, tell: (telling: Telling) => void): void {
  app.on('certificate-error', (event, _contents, url, error, _certificate, answer) => {
    event.preventDefault()
    answer(false)
    tell(noCertificate(url, error))
  })
  app.on('select-client-certificate', (event, _contents, _url, _certificates, answer) => {
    event.preventDefault()
    answer()
  })
  app.on('login', (event, _contents, _details, _authInfo, answer) => {
    event.preventDefault()
    answer()
  })
}
