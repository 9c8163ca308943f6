import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]
const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

type Environment = Readonly<Record<string, string | undefined>>

/** A Chromium to run the page in: CHROMIUM_PATH if it is set, else the usual places and the path; null when there is none. */
export function findChromium(environment: Environment, exists: (file: string) => boolean = existsSync): string | null {
  if (environment.CHROMIUM_PATH) return exists(environment.CHROMIUM_PATH) ? environment.CHROMIUM_PATH : null
  const onPath = (environment.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => names.map((name) => join(folder, name)))
  return [...usualPlaces, ...onPath].find(exists) ?? null
}

/**
 * Installs Debian's Chromium where that is possible without asking anyone (as root, with apt-get); resolves with what was
 * done, or with why it could not be.
 */
export function installChromium(): { installed: boolean; because: string } {
  if (process.platform !== 'linux' || !existsSync('/usr/bin/apt-get'))
    return { installed: false, because: 'install Chromium or name one with CHROMIUM_PATH' }
  if (process.getuid?.() !== 0)
    return { installed: false, because: 'run "sudo apt-get install chromium" or name one with CHROMIUM_PATH' }
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const run = (...words: string[]) =>
    spawnSync('apt-get', words, { env: environment, stdio: 'ignore', timeout: 300_000 }).status === 0
  run('update', '-qq')
  const installed = run('install', '-y', '-qq', '--no-install-recommends', 'chromium')
  return { installed, because: installed ? 'apt-get install chromium' : '"apt-get install chromium" failed' }
}
