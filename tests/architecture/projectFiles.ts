import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's own folder. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url))

/** The paths of the project's own files: what git tracks or would track; without git, all but what was installed or built. */
export function projectFiles(): string[] {
  if (!existsSync(join(projectFolder, '.git'))) return walk('')
  const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '-z'], {
    cwd: projectFolder,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  })
  return listed.split('\0').filter((path) => path !== '' && existsSync(join(projectFolder, path)))
}

/** The text of one of the project's files. */
export function readProjectFile(path: string): string {
  return readFileSync(join(projectFolder, path), 'utf8')
}

const madeFolders = ['node_modules', 'dist', 'release', '.vite', 'tests/output']

function walk(folder: string): string[] {
  return readdirSync(join(projectFolder, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`
    if (!entry.isDirectory()) return [path]
    return madeFolders.includes(path) ? [] : walk(path)
  })
}
