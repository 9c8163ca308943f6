import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { projectFolder } from '#tests/architecture/projectFiles.ts'

/** The TypeScript files that folders and files stand for, in order, as paths in the project. */
export function sourceFiles(places: readonly string[]): string[] {
  return places.flatMap((place) => {
    const path = place.replace(/\/$/, '')
    const full = join(projectFolder, path)
    if (!existsSync(full)) throw new RangeError(`There is no ${place}.`)
    if (!statSync(full).isDirectory()) return [path]
    return readdirSync(full, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .sort()
      .map((name) => `${path}/${name}`)
  })
}

/** A line at the head of a source file whose rules another spec than its mirror holds. */
const heldBy = /^\/\/ Held by (tests\/\S+\.spec\.tsx?)\.$/m

/** The spec that holds a source file: its mirror, or the one that the file names; null without either. */
export function specOf(source: string): string | null {
  const mirror = `tests/${source.replace(/^electron\//, '')}`.replace(/\.(tsx?)$/, '.spec.$1')
  if (existsSync(join(projectFolder, mirror))) return mirror
  return readFileSync(join(projectFolder, source), 'utf8').match(heldBy)?.[1] ?? null
}
