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

/** A Chromium on this machine: CHROMIUM_PATH if it is set, else the usual places and the path; null when there is none. */
export function findChromium(environment: Environment, exists: (file: string) => boolean = existsSync): string | null {
  if (environment.CHROMIUM_PATH) return exists(environment.CHROMIUM_PATH) ? environment.CHROMIUM_PATH : null
  const onPath = (environment.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => names.map((name) => join(folder, name)))
  return [...usualPlaces, ...onPath].find(exists) ?? null
}
