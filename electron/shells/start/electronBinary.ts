import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { projectFolder } from './build.ts'

const electronFolder = join(projectFolder, 'node_modules/electron')

/** Where Electron runs from, or why it does not run here. */
export type ElectronFinding = { path: string } | { because: string }

type Surroundings = {
  platform: NodeJS.Platform
  userId: number | undefined
  environment: Readonly<Record<string, string | undefined>>
}

/** Why a window cannot be opened here at all, or null when it can. */
export function noWindowBecause({ platform, userId, environment }: Surroundings): string | null {
  if (platform !== 'linux') return null
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return 'there is no display for a window of its own'
  if (userId === 0) return 'the sandbox of Electron does not run as root'
  return null
}

/** The Electron binary that is there already, or null. Its npm package comes without one and fetches it on demand. */
export function presentElectron(folder: string = electronFolder): string | null {
  const pathFile = join(folder, 'path.txt')
  if (!existsSync(pathFile)) return null
  const binary = join(folder, 'dist', readFileSync(pathFile, 'utf8').trim())
  return existsSync(binary) ? binary : null
}

/** How long the place of the download may take to answer. */
const answerWithinMs = 3000

/**
 * Finds Electron, and fetches it where its download can be reached: one short question first, so that a closed network costs
 * three seconds at most.
 */
export async function findElectron(say: (line: string) => void): Promise<ElectronFinding> {
  const userId = process.getuid?.()
  const because = noWindowBecause({ platform: process.platform, userId, environment: process.env })
  if (because !== null) return { because }
  const present = presentElectron()
  if (present !== null) return { path: present }
  if (!(await downloadAnswers())) return { because: 'Electron is not here and cannot be fetched' }
  say('Fetching Electron, about 120 MB, once ...')
  const done = await new Promise<boolean>((resolve) => {
    const fetching = spawn(process.execPath, [join(electronFolder, 'install.js')], {
      stdio: ['ignore', 'ignore', 'inherit'],
    })
    fetching.on('error', () => resolve(false))
    fetching.on('exit', (code) => resolve(code === 0))
  })
  const fetched = done ? presentElectron() : null
  return fetched === null ? { because: 'Electron could not be fetched' } : { path: fetched }
}

/** Asks the address that Electron's own package will download from; a mirror is named as for that package. */
async function downloadAnswers(): Promise<boolean> {
  const { version } = JSON.parse(readFileSync(join(electronFolder, 'package.json'), 'utf8')) as { version: string }
  const mirror = process.env.ELECTRON_MIRROR ?? process.env.npm_config_electron_mirror
  const folder = mirror ?? 'https://github.com/electron/electron/releases/download/'
  try {
    const answer = await fetch(`${folder}v${version}/SHASUMS256.txt`, {
      method: 'HEAD',
      redirect: 'manual',
      signal: AbortSignal.timeout(answerWithinMs),
    })
    return answer.status < 400
  } catch {
    return false
  }
}
