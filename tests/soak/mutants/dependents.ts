import { readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { projectFolder } from '#tests/architecture/projectFiles.ts'

const importing = /^(?:import|export|\}).* from '([^']+\.ts)'|^import '([^']+\.ts)'/gm
const aliases: Readonly<Record<string, string>> = { '#domain': 'electron/domain', '#tests': 'tests' }

function fileOf(specifier: string, importer: string): string {
  if (specifier.startsWith('.')) return resolve(dirname(importer), specifier)
  const [alias = '', ...rest] = specifier.split('/')
  return join(projectFolder, aliases[alias] ?? alias, ...rest)
}

/** Which of the modules below `from` import `target`, itself or through others; both are full paths. `from` is always one. */
export function dependentsOf(target: string, from: string, among: (path: string) => boolean): ReadonlySet<string> {
  const importsOf = new Map<string, string[]>()
  const open = [from]
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    if (importsOf.has(path)) continue
    const importer = path
    const imported = [...readFileSync(path, 'utf8').matchAll(importing)]
      .map((match) => fileOf((match[1] ?? match[2]) as string, importer))
      .filter(among)
    importsOf.set(path, imported)
    open.push(...imported)
  }
  const dependents = new Set([from, target])
  for (let before = 0; before !== dependents.size; ) {
    before = dependents.size
    for (const [path, imported] of importsOf) if (imported.some((one) => dependents.has(one))) dependents.add(path)
  }
  return dependents
}
