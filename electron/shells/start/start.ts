import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { parseArgs } from 'node:util'
import { archiveFile } from '../archiveFile.ts'
import { commands } from '../commands/commands.ts'
import { processIo } from '../commands/processIo.ts'
import { runCommandLine } from '../commands/runCommandLine.ts'
import { buildIfNeeded, partNames, projectFolder } from './build.ts'
import { findElectron } from './electronBinary.ts'

const usage = `Usage: npm start [-- --archive FILE] [-- --browser] [-- --no-open]
Opens Breakledger in a window of its own, or in the browser where Electron cannot run.
Without --archive it opens your archive if there is one, else the demo: a study of its own file with a virtual amplifier.`

/** Which archive to open: the one that was named, the person's own if it exists, else the demo. */
function chooseArchive(named: string | undefined): { archivePath: string; demo: boolean } {
  if (named !== undefined) return { archivePath: named, demo: false }
  const surroundings = { platform: process.platform, home: homedir(), environment: process.env }
  const own = archiveFile('own', surroundings)
  if (existsSync(own)) return { archivePath: own, demo: false }
  return { archivePath: archiveFile('demo', surroundings), demo: true }
}

async function startInWindow(binary: string, choice: ReturnType<typeof chooseArchive>): Promise<void> {
  await Promise.all(partNames.map(buildIfNeeded))
  const words = choice.demo ? ['--demo'] : ['--archive', choice.archivePath]
  const window = spawn(binary, [projectFolder, ...words], { stdio: 'inherit' })
  window.on('exit', (code) => {
    process.exitCode = code ?? 1
  })
}

/** Runs the `serve` command; the one line that it prints also says why there is no window. */
async function startInBrowser(because: string, choice: ReturnType<typeof chooseArchive>, open: boolean): Promise<void> {
  await Promise.all([buildIfNeeded('page'), buildIfNeeded('threads')])
  const io = processIo()
  const words = ['serve', ...(choice.demo ? ['--demo'] : []), '--archive', choice.archivePath]
  if (!open) words.push('--no-open')
  const explanation = `Breakledger runs in the browser (${because}): `
  process.exitCode = await runCommandLine(commands, words, { ...io, out: (text) => io.out(explanation + text) })
}

async function start(): Promise<void> {
  const { values } = parseArgs({
    options: {
      archive: { type: 'string' },
      browser: { type: 'boolean', default: false },
      'no-open': { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  })
  if (values.help) return console.log(usage)
  const choice = chooseArchive(values.archive)
  // The page is needed either way, so it is built while the way is being found.
  const building = buildIfNeeded('page')
  const [electron] = await Promise.all([
    values.browser ? { because: 'as asked' } : findElectron((line) => console.log(line)),
    building,
  ])
  if ('path' in electron) await startInWindow(electron.path, choice)
  else await startInBrowser(electron.because, choice, !values['no-open'])
}

try {
  await start()
} catch (thrown) {
  const isUsage = thrown instanceof TypeError && 'code' in thrown && String(thrown.code).startsWith('ERR_PARSE_ARGS')
  console.error(isUsage ? `${thrown.message}\n${usage}` : thrown)
  process.exitCode = isUsage ? 2 : 1
}
