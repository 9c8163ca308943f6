import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A page on disk that leads on to an address; `remove` deletes it and may be called again. */
export type RedirectFile = { path: string; remove(): void }

/**
 * Writes an address into a file that its owner alone can read, in a folder of its own. A browser is started with the file's
 * name: what stands in a command line every user of the computer can read.
 */
export function writeRedirectFile(address: string, parent: string = tmpdir()): RedirectFile {
  const folder = mkdtempSync(join(parent, 'breakledger-open-'))
  const path = join(folder, 'open.html')
  const quoted = address.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;')
  const page = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="referrer" content="no-referrer" />
    <meta http-equiv="refresh" content="0; url=${quoted}" />
    <title>Breakledger</title>
  </head>
  <body><a href="${quoted}">Open Breakledger</a></body>
</html>
`
  try {
    writeFileSync(path, page, { mode: 0o600, flag: 'wx' })
  } catch (thrown) {
    rmSync(folder, { recursive: true, force: true })
    throw thrown
  }
  return { path, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
