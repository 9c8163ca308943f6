import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

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
