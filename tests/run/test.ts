import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { delimiter, dirname, join } from 'node:path'
import { findChromium } from '#exchange/pdf/findChromium.ts'
import { buildIfNeeded, partNames, projectFolder } from '#shells/start/build.ts'
import { noWindowBecause, presentElectron } from '#shells/start/electronBinary.ts'
import { installChromium } from './installChromium.ts'

/**
 * Everything that must hold before a change lands: types, style, import rules, a build, and all tests. The steps before the
 * tests run side by side; one that fails does not hide what the others have to say.
 */

type Outcome = { name: string; passed: boolean; seconds: number; output: string }

const projects = [
  'tests',
  'renderer',
  'electron',
  'electron/contract',
  'electron/domain',
  'electron/words',
  'electron/figures',
]
const importRoots = ['electron', 'renderer', 'tests']

/** Runs a program out of node_modules/.bin and keeps what it says. */
function run(name: string, program: string, ...words: string[]): Promise<Outcome> {
  const startedAt = performance.now()
  const extension = process.platform === 'win32' ? '.cmd' : ''
  const child = spawn(join(projectFolder, 'node_modules/.bin', program + extension), words, {
    cwd: projectFolder,
    // The same Node for every step, whichever the system has.
    env: { ...process.env, PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH ?? ''}` },
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: process.platform === 'win32',
  })
  let output = ''
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => (output += text))
  return new Promise((resolve) => {
    const end = (passed: boolean) => resolve({ name, passed, seconds: (performance.now() - startedAt) / 1000, output })
    child.on('error', (error) => {
      output += error.message
      end(false)
    })
    child.on('close', (code) => end(code === 0))
  })
}

async function build(): Promise<Outcome> {
  const startedAt = performance.now()
  const outcome = (passed: boolean, output: string): Outcome => ({
    name: 'build',
    passed,
    seconds: (performance.now() - startedAt) / 1000,
    output,
  })
  try {
    for (const part of partNames) await buildIfNeeded(part)
    return outcome(true, '')
  } catch (thrown) {
    return outcome(false, thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown))
  }
}

function report({ name, passed, seconds, output }: Outcome): boolean {
  console.log(`${passed ? 'ok    ' : 'FAILED'} ${name} (${seconds.toFixed(1)} s)`)
  if (!passed) console.log(output.trimEnd())
  return passed
}

/** Makes sure of a Chromium, or says in one line that the browser tests are not run. */
function prepareChromium(): void {
  let path = findChromium(process.env)
  let because = 'set CHROMIUM_PATH'
  if (path === null) {
    const attempt = installChromium()
    because = attempt.because
    if (attempt.installed) path = findChromium(process.env)
  }
  console.log(
    path === null
      ? `NOT RUN: the browser tests, as there is no Chromium on this machine (${because}).`
      : `Chromium: ${path}`,
  )
}

/** Says in one line when the tests inside Electron itself are not run. */
function announceDesktop(): void {
  const userId = process.getuid?.()
  const noWindow = noWindowBecause({ platform: process.platform, userId, environment: process.env })
  const because = presentElectron() === null ? 'its binary is not on this machine' : noWindow
  if (because !== null) console.log(`NOT RUN: the tests inside Electron itself, as ${because}.`)
}

/** Runs vitest with its own output; resolves with whether it passed, and the closing line. */
async function runTests(filters: readonly string[]): Promise<{ passed: boolean; closing: string }> {
  const resultFile = join(projectFolder, 'tests/output/results.json')
  mkdirSync(join(projectFolder, 'tests/output'), { recursive: true })
  rmSync(resultFile, { force: true })
  const words = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${resultFile}`, ...filters]
  const vitest = join(projectFolder, 'node_modules/vitest/vitest.mjs')
  const child = spawn(process.execPath, [vitest, ...words], { cwd: projectFolder, stdio: 'inherit' })
  const passed = await new Promise<boolean>((resolve) => {
    child.on('error', () => resolve(false))
    child.on('close', (code) => resolve(code === 0))
  })
  if (!existsSync(resultFile)) return { passed: false, closing: 'The tests did not run to their end.' }
  const result = JSON.parse(readFileSync(resultFile, 'utf8')) as Record<string, number>
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0, numTodoTests = 0 } = result
  const skipped = numPendingTests + numTodoTests
  return {
    passed: passed && numPassedTests > 0,
    closing: `Tests: ${numPassedTests} passed, ${numFailedTests} failed, ${skipped} skipped`,
  }
}

/** The steps before the tests, longest first, so that two at a time fill two cores. */
const steps: (() => Promise<Outcome>)[] = [
  ...projects.map((project) => () => run(`types of ${project}`, 'tsc', '-p', project)),
  build,
  () => run('import rules', 'depcruise', '--config', '.dependency-cruiser.mjs', ...importRoots),
  () => run('style', 'biome', 'check', '.'),
]

/** Takes steps from the front until none is left; resolves with whether all it took have passed. */
async function work(): Promise<boolean> {
  let passed = true
  for (let step = steps.shift(); step !== undefined; step = steps.shift()) passed = report(await step()) && passed
  return passed
}

const workers = await Promise.all([work(), work()])
prepareChromium()
announceDesktop()
const tests = await runTests(process.argv.slice(2))
const failed = workers.includes(false)
if (failed) console.log('FAILED: a step before the tests; see above.')
console.log(tests.closing)
process.exitCode = tests.passed && !failed ? 0 : 1
