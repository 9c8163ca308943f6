import { type ChildProcess, spawn } from 'node:child_process'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Trouble } from '#contract/errors.ts'
import { inTemporaryFolder } from '../temporaryFolder.ts'

/** Against a hang alone: hundreds of pages take seconds. */
const patienceMs = 180_000

/**
 * An HTML text as PDF, printed by a Chromium of this machine that is started for it, with a profile that is thrown away. Rejects
 * with a Trouble when it does not print, or takes too long; with the signal's reason when it is aborted, which ends the Chromium.
 */
export async function printByChromium(
  chromium: string,
  html: string,
  signal?: AbortSignal,
): Promise<Uint8Array<ArrayBuffer>> {
  signal?.throwIfAborted()
  return inTemporaryFolder('breakledger-print-', async (folder) => {
    const [page, pdf] = [join(folder, 'page.html'), join(folder, 'page.pdf')]
    await writeFile(page, html)
    const words = [
      '--headless',
      '--disable-gpu',
      '--no-first-run',
      '--disable-sync',
      '--disable-background-networking',
      '--disable-component-update',
      // Its sandbox refuses to start for root; what is printed is our own page, without any script
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      `--user-data-dir=${join(folder, 'profile')}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${pdf}`,
      pathToFileURL(page).href,
    ]
    const said = await run(chromium, words, folder, signal)
    return await readFile(pdf).then(
      (bytes) => new Uint8Array(bytes),
      () => {
        throw notPrinted(chromium, said)
      },
    )
  })
}

/** Runs to its end, which an aborted signal brings about, and resolves with what it said on stderr. */
function run(program: string, words: readonly string[], folder: string, signal?: AbortSignal): Promise<string> {
  return new Promise((resolve, reject) => {
    const child: ChildProcess = spawn(program, words, {
      stdio: ['ignore', 'ignore', 'pipe'],
      timeout: patienceMs,
      // It takes away no temporary file of its own where it is ended early
      env: { ...process.env, TMPDIR: folder },
    })
    let said = ''
    const end = () => void child.kill()
    signal?.addEventListener('abort', end)
    if (signal?.aborted) end()
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said = (said + text).slice(-4000)
    })
    child.on('error', (thrown) => reject(notPrinted(program, thrown.message)))
    child.on('close', (code, by) => {
      signal?.removeEventListener('abort', end)
      if (signal?.aborted) reject(signal.reason)
      else if (code === 0) resolve(said)
      else reject(notPrinted(program, by === 'SIGTERM' ? `it took more than ${patienceMs / 1000} s` : said))
    })
  })
}

function notPrinted(chromium: string, said: string): Trouble {
  const last = said.trim().split('\n').at(-1) ?? ''
  return new Trouble(
    'unsupported',
    `${chromium} did not print the page${last === '' ? '' : `: ${last}`}.`,
    'Have the sheet written as HTML and print it from a browser, at 100 %, or name another Chromium with CHROMIUM_PATH.',
  )
}
