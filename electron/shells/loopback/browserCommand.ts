import { spawn } from 'node:child_process'

/** The words that open an address in the person's browser, or null where no browser can be seen (no display). */
export function browserCommand(
  address: string,
  platform: NodeJS.Platform,
  environment: Readonly<Record<string, string | undefined>>,
): [string, ...string[]] | null {
  if (platform === 'darwin') return ['open', address]
  // Not through cmd.exe, to which "&" in an address would be the end of it.
  if (platform === 'win32') return ['rundll32.exe', 'url.dll,FileProtocolHandler', address]
  return environment.DISPLAY || environment.WAYLAND_DISPLAY ? ['xdg-open', address] : null
}

/** Opens the address in the person's browser; where that cannot be done nothing happens, since the address was printed. */
export function showInBrowser(address: string): void {
  const words = browserCommand(address, process.platform, process.env)
  if (words === null) return
  const [program, ...rest] = words
  const child = spawn(program, rest, { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
}
