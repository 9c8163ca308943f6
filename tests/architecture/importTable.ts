/**
 * Who may import whom, as data: the rules of .dependency-cruiser.mjs and the table in DEVELOPERS.md both follow from it.
 * A row names one folder with all below it that has no row of its own; its own files may always import each other.
 */
export type ImportRow = {
  folder: string
  /** Only the files that lie directly in the folder; its subfolders have rows of their own. */
  filesOnly?: true
  /** Folders of ours that it may import, type imports included; a slash at the end: it and all rows below. */
  ours: readonly string[]
  /** npm packages that it may import. */
  packages: readonly string[]
  /** Whether Node's own modules may be imported. */
  node: boolean
}

/** What the program is about; each is called the same on every floor. Not every floor has every subject. */
export const subjects = [
  'bench',
  'breaks',
  'calibration',
  'findings',
  'keeping',
  'programme',
  'publishing',
  'reevaluation',
  'settings',
  'specimens',
] as const

const contract = 'electron/contract'
const domain = 'electron/domain'
const words = 'electron/words'
const figures = 'electron/figures'
const archiveClient = 'electron/archive'
const pageGround = [contract, domain, words]

/** Rows of one kind, one for each subject. */
function perSubject(floor: string, row: Omit<ImportRow, 'folder'>): ImportRow[] {
  return subjects.map((subject) => ({ folder: `${floor}/${subject}`, ...row }))
}

export const importTable: readonly ImportRow[] = [
  { folder: contract, ours: [], packages: ['zod'], node: false },
  { folder: domain, ours: [contract], packages: [], node: false },
  { folder: words, ours: [contract, domain], packages: [], node: false },
  { folder: figures, ours: [contract, domain, words], packages: ['d3-scale', 'd3-shape'], node: false },
  {
    folder: 'electron/acquisition',
    ours: [contract, domain],
    packages: ['serialport', '@lydell/node-pty'],
    node: true,
  },
  { folder: 'electron/archive/core', ours: [contract, domain], packages: ['better-sqlite3'], node: true },
  { folder: 'electron/archive/curves', ours: [contract, domain], packages: ['better-sqlite3'], node: true },
  {
    folder: 'electron/archive/catalogue',
    ours: [contract, domain, 'electron/archive/core'],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/archive/lists',
    ours: [contract, domain, words, 'electron/archive/core', 'electron/archive/catalogue'],
    packages: ['better-sqlite3'],
    node: true,
  },
  ...perSubject('electron/archive', {
    ours: [
      contract,
      domain,
      'electron/archive/core',
      'electron/archive/catalogue',
      'electron/archive/curves',
      'electron/archive/lists',
    ],
    packages: [],
    node: true,
  }),
  {
    folder: 'electron/archive/verify',
    ours: [
      contract,
      domain,
      'electron/archive/core',
      'electron/archive/catalogue',
      'electron/archive/curves',
      'electron/archive/lists',
      ...subjects.map((subject) => `electron/archive/${subject}`),
    ],
    packages: [],
    node: true,
  },
  {
    folder: archiveClient,
    filesOnly: true,
    ours: [
      contract,
      domain,
      'electron/archive/core',
      'electron/archive/catalogue',
      'electron/archive/curves',
      'electron/archive/lists',
      ...subjects.map((subject) => `electron/archive/${subject}`),
      'electron/archive/verify',
    ],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/exchange',
    ours: [contract, domain, words, figures],
    packages: ['csv-parse', 'ical-generator', 'sax', 'uqr', 'yauzl'],
    node: true,
  },
  {
    folder: 'electron/engine/core',
    ours: [contract, domain, 'electron/acquisition', archiveClient, 'electron/exchange'],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/engine/bench',
    ours: [contract, domain, 'electron/acquisition', archiveClient, 'electron/exchange', 'electron/engine/core'],
    packages: [],
    node: true,
  },
  ...perSubject('electron/engine', {
    ours: [
      contract,
      domain,
      'electron/acquisition',
      archiveClient,
      'electron/exchange',
      'electron/engine/core',
      'electron/engine/bench',
    ],
    packages: [],
    node: true,
  }).filter(({ folder }) => folder !== 'electron/engine/bench'),
  {
    folder: 'electron/engine',
    filesOnly: true,
    ours: [
      contract,
      domain,
      'electron/acquisition',
      archiveClient,
      'electron/exchange',
      'electron/engine/core',
      ...subjects.map((subject) => `electron/engine/${subject}`),
    ],
    packages: [],
    node: true,
  },
  { folder: 'electron/shells/page', ours: [contract], packages: [], node: true },
  { folder: 'electron/shells', filesOnly: true, ours: [contract, words, 'electron/engine/'], packages: [], node: true },
  {
    folder: 'electron/shells/desktop',
    ours: [contract, words, 'electron/engine/', 'electron/shells', 'electron/shells/page'],
    packages: ['electron'],
    node: true,
  },
  {
    folder: 'electron/shells/loopback',
    ours: [contract, words, 'electron/engine/', 'electron/shells', 'electron/shells/page'],
    packages: ['ws', 'zod'],
    node: true,
  },
  {
    folder: 'electron/shells/commands',
    ours: [contract, words, 'electron/engine/', 'electron/shells', 'electron/shells/loopback'],
    packages: [],
    node: true,
  },
  {
    folder: 'electron/shells/start',
    ours: ['electron/shells', 'electron/shells/commands'],
    packages: ['vite'],
    node: true,
  },
  { folder: 'renderer/theme', ours: pageGround, packages: [], node: false },
  { folder: 'renderer/host', ours: pageGround, packages: ['react'], node: false },
  { folder: 'renderer/widgets', ours: [...pageGround, 'renderer/theme'], packages: ['react'], node: false },
  {
    folder: 'renderer/plots',
    ours: [...pageGround, 'renderer/widgets', 'renderer/theme'],
    packages: ['uplot'],
    node: false,
  },
  { folder: 'renderer/routes', ours: [contract], packages: [], node: false },
  {
    folder: 'renderer/parts',
    ours: [...pageGround, figures, 'renderer/widgets', 'renderer/plots', 'renderer/host', 'renderer/routes'],
    packages: ['react'],
    node: false,
  },
  ...perSubject('renderer/pages', {
    ours: [
      ...pageGround,
      figures,
      'renderer/widgets',
      'renderer/plots',
      'renderer/host',
      'renderer/routes',
      'renderer/parts',
    ],
    packages: ['react'],
    node: false,
  }),
  {
    folder: 'renderer/frame',
    ours: ['renderer/pages/', 'renderer/parts', 'renderer/routes', 'renderer/host', 'renderer/widgets'],
    packages: ['react'],
    node: false,
  },
  {
    folder: 'renderer',
    filesOnly: true,
    ours: [contract, 'renderer/frame', 'renderer/host', 'renderer/widgets', 'renderer/theme'],
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

/** The rows that a name in `ours` stands for: one folder, or with a slash at its end all rows below and in it. */
export function rowsFor(name: string): ImportRow[] {
  if (!name.endsWith('/')) return [rowFor(name)]
  return importTable.filter(({ folder }) => `${folder}/`.startsWith(name))
}
