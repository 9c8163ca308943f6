import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cruiseTree, type TreeReport } from './cruiseTree.ts'
import { electronEntries, ruleNames } from './importRules.ts'
import { type ImportRow, importTable, rowFor, rowOf, rowsFor, subjects } from './importTable.ts'
import { type ImportKind, importKinds, plantedPackages, plantTree } from './plantedTree.ts'
import { projectFiles, projectFolder, readProjectFile } from './projectFiles.ts'

const rareKinds = (Object.keys(importKinds) as ImportKind[]).filter((kind) => kind !== 'value')

/** The table as DEVELOPERS.md prints it: rows that differ in the subject alone are one row. */
function tableInWords(): string[][] {
  const anySubject = new RegExp(`/(${subjects.join('|')})$`)
  const list = (names: readonly string[]) => (names.length === 0 ? '-' : [...new Set(names)].join(', '))
  const oneForAll = (names: readonly string[]) =>
    names.map((name) => {
      const floor = name.replace(anySubject, '')
      const isWhole = floor !== name && subjects.every((subject) => names.includes(`${floor}/${subject}`))
      return isWhole ? `${floor}/<subject>` : name.endsWith('/') ? name : placeOf(rowFor(name))
    })
  const rows = importTable.map((row) => [
    placeOf(row).replace(anySubject, row.folder === 'electron/engine/bench' ? '/$1' : '/<subject>'),
    list(oneForAll(row.ours)),
    list(row.packages),
    row.node ? 'yes' : 'no',
  ])
  return rows.filter((row, i) => row.join('|') !== rows[i - 1]?.join('|'))
}

/** Where a planted file lies, as the rows of the table are told apart. */
const placeOf = ({ folder, filesOnly }: ImportRow) => (filesOnly ? `${folder}/*.ts` : folder)

describe('the import rules', () => {
  const tree = plantTree()
  /** What was planted: file, the rule that must report it, and what it is. */
  const forbidden: { file: string; rule: string; what: string }[] = []
  const allowed: { file: string; what: string }[] = []
  let report: TreeReport

  beforeAll(async () => {
    for (const row of importTable) {
      const mayImport = new Set(row.ours.flatMap(rowsFor).map(placeOf))
      const others = [...importTable.filter((candidate) => candidate !== row), { folder: 'tests' } as ImportRow]
      // As a value into every folder; the other ways to write it take turns.
      for (const [place, other] of others.entries())
        for (const kind of ['value', rareKinds[place % rareKinds.length]!] as const) {
          const file = tree.plantImport(row.folder, other.folder, kind)
          const what = `${placeOf(row)} -> ${placeOf(other)} (${kind})`
          if (mayImport.has(placeOf(other))) allowed.push({ file, what })
          else forbidden.push({ file, rule: ruleNames(row).folders, what })
        }
      for (const name of plantedPackages.filter((candidate) => candidate !== 'electron'))
        for (const kind of ['value', 'type'] as const) {
          const file = tree.plantPackageImport(row.folder, name, kind)
          const what = `${row.folder} -> ${name} (${kind})`
          if (row.packages.includes(name)) allowed.push({ file, what })
          else forbidden.push({ file, rule: ruleNames(row).packages, what })
        }
      const file = tree.plantPackageImport(row.folder, 'node:path', 'value')
      if (row.node) allowed.push({ file, what: `${row.folder} -> node:path` })
      else forbidden.push({ file, rule: ruleNames(row).node, what: `${row.folder} -> node:path` })
    }
    plantElectron()
    plantRest()
    report = await cruiseTree(tree.folder)
  })
  afterAll(() => tree.remove())

  function plantElectron(): void {
    const rule = 'electron-as-a-value-in-its-entries-only'
    const desktop = 'electron/shells/desktop'
    for (const path of electronEntries)
      allowed.push({ file: tree.plant(path, importKinds.value('electron')), what: `${path} -> electron (value)` })
    allowed.push({ file: tree.plantPackageImport(desktop, 'electron', 'type'), what: `${desktop} -> electron (type)` })
    // `import { type X }` is held by tree.spec.ts: the tool takes it for a type import, Node would load the module.
    for (const kind of ['value', 'reexport', 'dynamic'] as const)
      forbidden.push({
        file: tree.plantPackageImport(desktop, 'electron', kind),
        rule,
        what: `${desktop} -> electron (${kind})`,
      })
    const both = `${importKinds.type('electron')}${importKinds.value('electron')}`.replaceAll('Used', 'UsedType')
    forbidden.push({ file: tree.plant(`${desktop}/both.ts`, both), rule, what: 'a value import behind a type import' })
    for (const row of importTable.filter(({ folder }) => folder !== desktop))
      for (const kind of ['value', 'type'] as const)
        forbidden.push({
          file: tree.plantPackageImport(row.folder, 'electron', kind),
          rule: ruleNames(row).packages,
          what: `${row.folder} -> electron (${kind})`,
        })
  }

  function plantRest(): void {
    forbidden.push(
      {
        file: tree.plantImport('electron/domain', 'electron/contract', 'value', 'relative'),
        rule: 'other-folders-by-alias-only',
        what: 'a relative path into another folder',
      },
      {
        file: tree.plant(
          'electron/engine/first.ts',
          "import type { Second } from './second.ts'\nexport type First = Second\n",
        ),
        rule: 'no-cycles',
        what: 'a cycle',
      },
      {
        file: tree.plant('renderer/pages/lost.ts', importKinds.type('#domain/nowhere.ts')),
        rule: 'no-unresolvable-imports',
        what: 'an import of nothing',
      },
    )
    tree.plant('electron/engine/second.ts', "import type { First } from './first.ts'\nexport type Second = First | 1\n")
    allowed.push({
      file: tree.plant('electron/engine/neighbour.ts', importKinds.value('./target.ts')),
      what: 'a neighbour in the same folder',
    })
  }

  it('read every planted file', () => {
    const read = new Set(report.modules)
    expect([...forbidden, ...allowed].filter(({ file }) => !read.has(file))).toEqual([])
    expect(forbidden.length).toBeGreaterThan(4000)
  })

  it('report each forbidden import, however it is written', () => {
    const reported = new Set(report.violations.map((violation) => violation.split(' -> ')[0]))
    expect(forbidden.filter(({ file, rule }) => !reported.has(`${rule}: ${file}`)).map(({ what }) => what)).toEqual([])
  })

  it('let each allowed import pass', () => {
    const accused = new Set(report.violations.map((violation) => violation.split(': ')[1]?.split(' -> ')[0]))
    expect(allowed.filter(({ file }) => accused.has(file)).map(({ what }) => what)).toEqual([])
  })
})

describe('the import table', () => {
  it('lets nothing but what runs anywhere into what is shared by page and engine', () => {
    expect(rowFor('electron/contract')).toMatchObject({ ours: [], node: false })
    expect(rowFor('electron/domain')).toMatchObject({ ours: ['electron/contract'], node: false })
    expect(rowFor('electron/words').ours).toEqual(['electron/contract', 'electron/domain'])
    expect(rowFor('electron/figures').ours).toEqual(['electron/contract', 'electron/domain', 'electron/words'])
  })

  it('lets the page see of electron/ only what is shared', () => {
    const seen = importTable.filter(({ folder }) => folder.startsWith('renderer')).flatMap(({ ours }) => ours)
    const ofElectron = seen.filter((folder) => folder.startsWith('electron/'))
    const shared = ['electron/contract', 'electron/domain', 'electron/words', 'electron/figures']
    expect(new Set(ofElectron)).toEqual(new Set(shared))
  })

  it('lets the parts meet in the engine alone', () => {
    for (const part of ['electron/acquisition', 'electron/archive', 'electron/exchange'])
      expect(
        importTable
          .filter(({ ours }) => ours.includes(part))
          .filter(({ folder }) => !/^electron\/engine\b/.test(folder)),
        part,
      ).toEqual([])
  })

  it.each(['renderer/pages', 'electron/archive'])('keeps the subjects of %s apart', (floor) => {
    for (const subject of subjects)
      for (const other of subjects) expect(rowFor(`${floor}/${subject}`).ours).not.toContain(`${floor}/${other}`)
  })

  it('lets a subject of the engine see no other but the bench', () => {
    for (const subject of subjects)
      for (const other of subjects.filter((candidate) => candidate !== 'bench'))
        expect(rowFor(`electron/engine/${subject}`).ours).not.toContain(`electron/engine/${other}`)
  })

  it('stands in DEVELOPERS.md as it is enforced', () => {
    const section = readProjectFile('DEVELOPERS.md').split('## Who may import whom')[1]?.split('\n## ')[0] ?? ''
    const written = section
      .split('\n')
      .filter((line) => line.startsWith('| `'))
      .map((line) =>
        line
          .replaceAll('`', '')
          .split('|')
          .slice(1, -1)
          .map((cell) => cell.trim()),
      )
    expect(written).toEqual(tableInWords())
  })
})

describe('the real tree', () => {
  it('keeps to the rules', async () => {
    const sources = projectFiles().filter((path) => /^(electron|renderer)\/.*\.(ts|tsx)$/.test(path))
    const { modules, violations } = await cruiseTree(projectFolder)
    expect(violations).toEqual([])
    expect(
      sources.filter((path) => !modules.includes(path)),
      'files that the checking tool did not read',
    ).toEqual([])
    expect(modules.length).toBeGreaterThan(150)
    expect(
      modules.filter((path) => rowOf(path) === undefined),
      'files in a folder without a row',
    ).toEqual([])
  })
})
