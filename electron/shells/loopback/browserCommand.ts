import { spawn } from 'node:child_process'
import { writeRedirectFile } from './redirectFile.ts'

/** The words that open a file in the person's browser, or null where no browser can be seen (no display). */
export function browserCommand(
  file: string,
  platform: NodeJS.Platform,
  environment: Readonly<Record<string, string | undefined>>,
): [string, ...string[]] | null {
  if (platform === 'darwin') return ['open', file]
  // Not through cmd.exe, to which "&" in a name would be the end of it.
  if (platform === 'win32') return ['rundll32.exe', 'url.dll,FileProtocolHandler', file]
  return environment.DISPLAY || environment.WAYLAND_DISPLAY ? ['xdg-open', file] : null
}

/**
 * Opens the address in the person's browser, by way of a private file; the returned function removes the file. Where it
 * cannot be done nothing happens, since the address was printed.
 */
export function showInBrowser(address: string): () => void {
  if (browserCommand('', process.platform, process.env) === null) return () => {}
  const file = writeRedirectFile(address)
  const [program, ...rest] = browserCommand(file.path, process.platform, process.env)!
  const child = spawn(program, rest, { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
  return file.remove
}
