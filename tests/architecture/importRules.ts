import type { IConfiguration } from 'dependency-cruiser'
import { filesOf, type ImportRow, importTable, rowsFor } from './importTable.ts'

type ForbiddenRule = NonNullable<IConfiguration['forbidden']>[number]
type Condition = Record<string, unknown>

/** The two files that may import `electron` as a value; the rest is handed what it needs, so that it runs without Electron. */
export const electronEntries = ['electron/shells/desktop/main.ts', 'electron/shells/desktop/preload.ts']

const ourFolders = '^(electron|renderer|tests)/'

/** The rules of dependency-cruiser that hold the import table, and those that hold for every file. */
export function forbiddenRules(): ForbiddenRule[] {
  return [...importTable.flatMap(rulesOf), ...rulesForAll]
}

/** The names of the rules that hold one row of the table. */
export function ruleNames(row: ImportRow): { folders: string; packages: string; node: string } {
  const stem = row.folder.replace('electron/', '').replaceAll('/', '-') + (row.filesOnly ? '-files' : '')
  return {
    folders: `${stem}-imports-allowed-folders-only`,
    packages: `${stem}-imports-allowed-packages-only`,
    node: `${stem}-imports-nothing-of-node`,
  }
}

function rulesOf(row: ImportRow): ForbiddenRule[] {
  const names = ruleNames(row)
  const from = { path: filesOf(row) }
  const allowedFiles = [row, ...row.ours.flatMap(rowsFor)].map(filesOf)
  const allowedPackages = row.packages.map((name) => `(^|/)node_modules/(@types/)?${name}/`)
  const rules = [
    rule(
      names.folders,
      from,
      { path: ourFolders, pathNot: allowedFiles },
      `${row.folder} may import ${list(row.ours)}.`,
    ),
    rule(
      names.packages,
      from,
      { path: '(^|/)node_modules/', ...(allowedPackages.length > 0 && { pathNot: allowedPackages }) },
      `Of packages, ${row.folder} may import ${list(row.packages)}.`,
    ),
  ]
  if (!row.node)
    rules.push(rule(names.node, from, { dependencyTypes: ['core'] }, `${row.folder} also runs where there is no Node.`))
  return rules
}

const rulesForAll: ForbiddenRule[] = [
  rule(
    'electron-as-a-value-in-its-entries-only',
    { pathNot: electronEntries.map((path) => `^${path}$`) },
    { path: '(^|/)node_modules/electron/', dependencyTypesNot: ['type-only'] },
    'Only main.ts and preload.ts import electron as a value; hand the rest what it needs as an argument.',
  ),
  rule(
    'other-folders-by-alias-only',
    { path: '^(electron/[^/]+|renderer)/' },
    { path: ourFolders, pathNot: ['^$1/'], dependencyTypesNot: ['aliased-subpath-import'] },
    'Another folder is imported by its alias, "#domain/..." for instance, so that there is one way to name a module.',
  ),
  rule('no-cycles', {}, { circular: true }, 'Modules that need each other are one idea or hide a third: split it off.'),
  rule('no-unresolvable-imports', {}, { couldNotResolve: true }, 'Nothing lies at the other end of this import.'),
  rule(
    'no-packages-missing-from-package-json',
    { path: ourFolders },
    { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    'The package is there by chance: name it in package.json and give its reason in DEVELOPERS.md.',
  ),
]

function rule(name: string, from: Condition, to: Condition, comment: string): ForbiddenRule {
  return {
    name,
    severity: 'error',
    comment: `${comment} See "Who may import whom" in DEVELOPERS.md.`,
    from,
    to,
  } as ForbiddenRule
}

function list(names: readonly string[]): string {
  return names.length === 0 ? 'none' : names.join(', ')
}
