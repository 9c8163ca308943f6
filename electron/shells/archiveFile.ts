import { posix, win32 } from 'node:path'

export type Surroundings = {
  platform: NodeJS.Platform
  home: string
  environment: Readonly<Record<string, string | undefined>>
}

/** Where the program keeps the heads of the archives' chains: in its own folder, wherever the archives lie. */
export function keptHeadsFile(surroundings: Surroundings): string {
  const path = surroundings.platform === 'win32' ? win32 : posix
  return path.join(path.dirname(archiveFile('own', surroundings)), 'heads.json')
}

/** Where the program remembers which archives were opened. */
export function openedArchivesFile(surroundings: Surroundings): string {
  const path = surroundings.platform === 'win32' ? win32 : posix
  return path.join(path.dirname(archiveFile('own', surroundings)), 'opened.json')
}

/**
 * Where a person's archive lies when no other is named: the same file for the desktop, the browser host and the commands.
 * Follows each system's own custom for a program's data (XDG base directories on Linux).
 */
export function archiveFile(kind: 'own' | 'demo', { platform, home, environment }: Surroundings): string {
  const name = kind === 'own' ? 'archive.breakledger' : 'demo.breakledger'
  if (platform === 'win32')
    return win32.join(environment.APPDATA || win32.join(home, 'AppData', 'Roaming'), 'Breakledger', name)
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Breakledger', name)
  const data = environment.XDG_DATA_HOME
  // The specification says that a relative path there is to be ignored.
  const folder = data !== undefined && posix.isAbsolute(data) ? data : posix.join(home, '.local', 'share')
  return posix.join(folder, 'breakledger', name)
}
