import { fileURLToPath } from 'node:url'
import { troubleFrom } from '#contract/errors.ts'
import { showInBrowser } from '../loopback/browserCommand.ts'
import type { Command } from './command.ts'
import { jsonLine } from './jsonLine.ts'
import { numberOption } from './optionValues.ts'
import { archiveOf, headsFile, knownPlaces } from './ownArchive.ts'
import { programName } from './programName.ts'

export const serveCommand: Command = {
  name: 'serve',
  operands: '',
  summary: 'Serves the program to a browser on this computer (127.0.0.1 only) and prints its address.',
  options: {
    'http-port': { type: 'string', value: 'N', help: 'port to listen on; 0 (default): any that is free' },
    'no-open': { type: 'boolean', help: 'does not open the browser' },
    demo: {
      type: 'boolean',
      help: 'opens the demo study in an archive of its own, with the virtual amplifier running',
    },
  },
  usesArchive: true,
  details: ['With --json the first line is {url}. The address opens the page once, in one browser. Ctrl-C ends it.'],
  async run({ io, values, json }) {
    const port = numberOption(values, 'http-port', { from: 0, to: 65535, whole: true }) ?? 0
    const demo = values.demo === true
    // From the first: an archive of an older format is copied while it is opened
    const { interrupt } = io
    const { serveArchive } = await import('../loopback/serveArchive.ts')
    const serving = await serveArchive({
      archivePath: archiveOf(values, demo ? 'demo' : 'own'),
      keptHeads: headsFile(),
      ...knownPlaces(),
      pageFolder: pageFolder(),
      port,
      program: programName,
      demo,
    })
    let removeRedirect = () => {}
    try {
      await io.out(json ? jsonLine({ url: serving.url }) : `${serving.url}\n`)
      if (values['no-open'] !== true) {
        removeRedirect = showInBrowser(serving.url)
        void serving.opened.then(removeRedirect)
      }
      // A demo that is stopped from the page, or cannot be filled, leaves a program that goes on.
      serving.demoStarted.catch((thrown: unknown) => {
        const { message, hint } = troubleFrom(thrown)
        io.err(`${message}\n${hint}\n`)
      })
      await aborted(interrupt)
    } finally {
      removeRedirect()
      await serving.close()
    }
    return 0
  },
}

/** The built page: of this project when run from source, beside the bundle when bundled. */
function pageFolder(): string {
  const place = import.meta.url.endsWith('.ts') ? '../../../dist/renderer' : '../renderer'
  return fileURLToPath(new URL(place, import.meta.url))
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve()
    else signal.addEventListener('abort', () => resolve(), { once: true })
  })
}
