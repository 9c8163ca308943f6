import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Trouble } from '#contract/errors.ts'

/** Against a hang alone: hundreds of pages take seconds. */
const patienceMs = 180_000

/**
 * An HTML text as PDF, printed by a Chromium of this machine that is started for it, with a profile that is thrown away. Rejects
 * with a Trouble when it does not print, or takes too long.
 */
export async function printByChromium(chromium: string, html: string): Promise<Uint8Array<ArrayBuffer>> {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-print-'))
  try {
    const [page, pdf] = [join(folder, 'page.html'), join(folder, 'page.pdf')]
    await writeFile(page, html)
    const said = await run(chromium, [
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
    ])
    return await readFile(pdf).then(
      (bytes) => new Uint8Array(bytes),
      () => {
        throw notPrinted(chromium, said)
      },
    )
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  }
}

/** Runs to its end and resolves with what it said on stderr. */
function run(program: string, words: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child: ChildProcess = spawn(program, words, { stdio: ['ignore', 'ignore', 'pipe'], timeout: patienceMs })
    let said = ''
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said = (said + text).slice(-4000)
    })
    child.on('error', (thrown) => reject(notPrinted(program, thrown.message)))
    child.on('close', (code, signal) => {
      if (code === 0) resolve(said)
      else reject(notPrinted(program, signal === 'SIGTERM' ? `it took more than ${patienceMs / 1000} s` : said))
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
