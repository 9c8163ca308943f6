import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { mirrorOf, namedSpec } from '#tests/architecture/mirrors.ts'
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

/** The spec that holds a source file: its mirror, or the one that the file names; null without either. */
export function specOf(source: string): string | null {
  const mirror = mirrorOf(source)
  if (existsSync(join(projectFolder, mirror))) return mirror
  return namedSpec(readFileSync(join(projectFolder, source), 'utf8'))
}
