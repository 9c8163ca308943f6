/**
 * Who may import whom, as data: the rules of .dependency-cruiser.mjs and the table in DEVELOPERS.md both follow from it.
 * A row names one folder; its own files may always import each other.
 */
export type ImportRow = {
  folder: string
  /** Only the files that lie directly in the folder; its subfolders have rows of their own. */
  filesOnly?: true
  /** Folders of ours that it may import, type imports included. */
  ours: readonly string[]
  /** npm packages that it may import. */
  packages: readonly string[]
  /** Whether Node's own modules may be imported. */
  node: boolean
}

export const importTable: readonly ImportRow[] = [
  { folder: 'electron/contract', ours: [], packages: ['zod'], node: false },
  { folder: 'electron/domain', ours: ['electron/contract'], packages: [], node: false },
  {
    folder: 'electron/acquisition',
    ours: ['electron/domain', 'electron/contract'],
    packages: ['serialport', '@lydell/node-pty'],
    node: true,
  },
  {
    folder: 'electron/archive',
    ours: ['electron/domain', 'electron/contract'],
    packages: ['better-sqlite3'],
    node: true,
  },
  { folder: 'electron/exchange', ours: ['electron/domain', 'electron/contract'], packages: [], node: true },
  {
    folder: 'electron/engine',
    ours: ['electron/contract', 'electron/domain', 'electron/acquisition', 'electron/archive', 'electron/exchange'],
    packages: [],
    node: true,
  },
  { folder: 'electron/shells/page', ours: ['electron/contract'], packages: [], node: true },
  {
    folder: 'electron/shells',
    filesOnly: true,
    ours: ['electron/engine', 'electron/contract'],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/shells/desktop',
    ours: ['electron/engine', 'electron/contract', 'electron/shells', 'electron/shells/page'],
    packages: ['electron'],
    node: true,
  },
  {
    folder: 'electron/shells/loopback',
    ours: ['electron/engine', 'electron/contract', 'electron/shells', 'electron/shells/page'],
    packages: ['ws', 'zod'],
    node: true,
  },
  {
    folder: 'electron/shells/commands',
    ours: ['electron/engine', 'electron/contract', 'electron/shells', 'electron/shells/loopback'],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/shells/start',
    ours: ['electron/shells', 'electron/shells/commands'],
    packages: ['vite'],
    node: true,
  },
  { folder: 'renderer/theme', ours: ['electron/contract', 'electron/domain'], packages: [], node: false },
  {
    folder: 'renderer/widgets',
    ours: ['electron/contract', 'electron/domain', 'renderer/theme'],
    packages: ['react'],
    node: false,
  },
  {
    folder: 'renderer/plots',
    ours: ['electron/contract', 'electron/domain', 'renderer/widgets', 'renderer/theme'],
    packages: ['uplot'],
    node: false,
  },
  { folder: 'renderer/host', ours: ['electron/contract', 'electron/domain'], packages: ['react'], node: false },
  {
    folder: 'renderer/pages',
    ours: ['electron/contract', 'electron/domain', 'renderer/plots', 'renderer/widgets', 'renderer/host'],
    packages: ['react'],
    node: false,
  },
  {
    folder: 'renderer',
    filesOnly: true,
    ours: ['electron/contract', 'renderer/pages', 'renderer/host', 'renderer/widgets', 'renderer/theme'],
    packages: ['react', 'react-dom', 'uplot', 'zod'],
    node: false,
  },
]

/** A regular expression, as text, that matches the paths of a row's own files. */
export function filesOf(row: ImportRow): string {
  return row.filesOnly ? `^${row.folder}/[^/]+$` : `^${row.folder}/`
}

/** The row that a file belongs to; undefined when the table does not know its folder. */
export function rowOf(path: string): ImportRow | undefined {
  return importTable.find((row) => new RegExp(filesOf(row)).test(path))
}

/** The row of a folder. Throws RangeError when the table has none. */
export function rowFor(folder: string): ImportRow {
  const row = importTable.find((candidate) => candidate.folder === folder)
  if (row === undefined) throw new RangeError(`the import table has no row for ${folder}`)
  return row
}
