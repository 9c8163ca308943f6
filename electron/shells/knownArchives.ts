import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { type KnownArchive, type OpenedArchive, openedArchivesFile } from '#contract/keeping/archive.ts'
import { changeFile } from '#engine/keeping/keptFile.ts'

/** So many archives are remembered; who has more finds the older ones by their path. */
const mostRemembered = 12

/** The archives that were opened, newest first; none where there is no such file yet, or nothing that can be read. */
export function openedArchives(file: string): OpenedArchive[] {
  try {
    return openedArchivesFile.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    return []
  }
}

/** Remembers that an archive was opened; a disk that does not take it stops no opening. */
export function noteOpened(file: string, opened: OpenedArchive): void {
  const others = () => openedArchives(file).filter(({ path }) => resolve(path) !== resolve(opened.path))
  try {
    changeFile(file, () => [opened, ...others()].slice(0, mostRemembered))
  } catch {
    // The list is a convenience: the archive itself is open.
  }
}

/** Where archives lie that were never named: the person's own and the demo. */
export type UsualPlaces = { own: string; demo: string }

/** The usual archives and those that were opened, each once: the one that is open first, then by when they were opened. */
export function knownArchives(opened: readonly OpenedArchive[], places: UsualPlaces, openPath: string): KnownArchive[] {
  const paths = [openPath, ...opened.map(({ path }) => path), places.own, places.demo].map((path) => resolve(path))
  return [...new Set(paths)].map((path) => ({
    path,
    kind: path === resolve(places.demo) ? 'demo' : 'own',
    isUsual: path === resolve(places.own) || path === resolve(places.demo),
    isOpen: path === resolve(openPath),
    isThere: existsSync(path),
    openedAt: opened.find((one) => resolve(one.path) === path)?.openedAt ?? null,
  }))
}
