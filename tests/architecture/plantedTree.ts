import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, relative } from 'node:path'
import { importTable } from './importTable.ts'
import { readProjectFile } from './projectFiles.ts'

/** Ways to write an import; the rules must see through each. */
export const importKinds = {
  value: (specifier: string) => `import { target } from '${specifier}'\nexport const used = target\n`,
  type: (specifier: string) => `import type { Target } from '${specifier}'\nexport type Used = Target\n`,
  inlineType: (specifier: string) => `import { type Target } from '${specifier}'\nexport type Used = Target\n`,
  reexport: (specifier: string) => `export * from '${specifier}'\n`,
  dynamic: (specifier: string) => `export const used = () => import('${specifier}')\n`,
  typeQuery: (specifier: string) => `export type Used = import('${specifier}').Target\n`,
} as const
export type ImportKind = keyof typeof importKinds

/** Every package that some row may import, and one that no row may. */
export const plantedPackages = [...new Set(importTable.flatMap((row) => row.packages)), 'stray-package']

/** A temporary tree laid out like ours, with a target in every folder of the table and a stand-in for every package. */
export type PlantedTree = {
  folder: string
  /** Writes a file and returns its path within the tree. */
  plant(path: string, text: string): string
  /** Plants a file that imports the target of another folder and returns its path. */
  plantImport(from: string, to: string, kind: ImportKind, style?: 'alias' | 'relative'): string
  /** Plants a file that imports a package or a module of Node and returns its path. */
  plantPackageImport(from: string, specifier: string, kind: ImportKind): string
  remove(): void
}

/** Makes the tree; `remove` takes it away again. */
export function plantTree(): PlantedTree {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-imports-'))
  let planted = 0

  function plant(path: string, text: string): string {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
    return path
  }

  const { imports } = JSON.parse(readProjectFile('package.json')) as { imports: Record<string, string> }
  const known = plantedPackages.map((name) => [name, '1.0.0'])
  plant('package.json', JSON.stringify({ type: 'module', imports, dependencies: Object.fromEntries(known) }))
  const targetText = 'export const target = 1\nexport type Target = number\n'
  for (const name of plantedPackages) {
    plant(`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', exports: './index.js' }))
    plant(`node_modules/${name}/index.js`, 'export const target = 1\n')
  }
  for (const { folder: row } of [...importTable, { folder: 'tests' }]) plant(targetOf(row), targetText)

  function specifierFor(from: string, to: string, style: 'alias' | 'relative'): string {
    const [alias] =
      Object.entries(imports).find(([, path]) => `./${targetOf(to)}`.startsWith(path.replace('*', ''))) ?? []
    if (style === 'relative' || alias === undefined) {
      const path = relative(from, targetOf(to))
      return path.startsWith('.') ? path : `./${path}`
    }
    const aliasedFolder = imports[alias]?.replace('./', '').replace('*', '') ?? ''
    return alias.replace('*', targetOf(to).slice(aliasedFolder.length))
  }

  return {
    folder,
    plant,
    plantImport(from, to, kind, style = 'alias') {
      return plant(`${from}/planted${planted++}.ts`, importKinds[kind](specifierFor(from, to, style)))
    },
    plantPackageImport(from, specifier, kind) {
      return plant(`${from}/planted${planted++}.ts`, importKinds[kind](specifier))
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

function targetOf(folder: string): string {
  return `${folder}/target.ts`
}
