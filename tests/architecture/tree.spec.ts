import { posix } from 'node:path'
import { describe, expect, it } from 'vitest'
import { electronEntries } from './importRules.ts'
import { hasLogic, mirrorOf, namedSpec, reachedFrom } from './mirrors.ts'
import { projectFiles, projectFolder, readProjectFile } from './projectFiles.ts'

const files = projectFiles()
const code = files.filter((path) => /\.(ts|tsx|mjs|cjs)$/.test(path))
const texts = files.filter(
  (path) => !/\.(png|ico|icns|woff2|breakledger|gz|zip)$/.test(path) && path !== 'package-lock.json',
)

/** Lines that match, as "file:line: text". */
function linesThat(paths: readonly string[], matches: (line: string) => boolean): string[] {
  return paths.flatMap((path) =>
    readProjectFile(path)
      .split('\n')
      .flatMap((line, index) => (matches(line) ? [`${path}:${index + 1}: ${line.trim()}`] : [])),
  )
}

/** The folder that an alias of package.json stands for: "electron/domain", "renderer", ... */
function topFolder(path: string): string {
  return path
    .split('/')
    .slice(0, path.startsWith('electron/') ? 2 : 1)
    .join('/')
}

function hasAlias(path: string): boolean {
  return /^(electron|renderer|tests)\//.test(path)
}

describe('the tree', () => {
  it('has a source file for every test file', () => {
    const ownFolders = [
      'reference',
      'browser',
      'contract',
      'architecture',
      'bench',
      'soak',
      'fakes',
      'desktop-smoke',
      'run',
    ]
    const withoutSource = files
      .filter((path) => /^tests\/.*\.spec\.tsx?$/.test(path))
      .filter((path) => !ownFolders.includes(path.split('/')[1] ?? ''))
      .filter((path) => {
        const mirrored = path.replace(/^tests\//, '').replace(/\.spec\.tsx?$/, '')
        const place = /^renderer\//.test(mirrored) ? mirrored : `electron/${mirrored}`
        return !['.ts', '.tsx', '.mjs'].some((ending) => files.includes(`${place}${ending}`))
      })
    expect(withoutSource).toEqual([])
  })

  it('has a test for every file that decides or computes anything: its mirror, or one that its head names', () => {
    // What is drawn by React is held by the browser runs
    const product = code.filter((path) => /^(electron|renderer)\/.*\.m?ts$/.test(path))
    const named = product.flatMap((path) => {
      const spec = namedSpec(readProjectFile(path))
      return spec === null ? [] : [{ path, spec }]
    })
    const held = new Set(named.map(({ path }) => path))
    expect(
      product.filter(
        (path) => !files.includes(mirrorOf(path)) && !held.has(path) && hasLogic(path, readProjectFile(path)),
      ),
      'without a test',
    ).toEqual([])
    expect(
      named.filter(({ path, spec }) => !files.includes(spec) || files.includes(mirrorOf(path))),
      'naming a test that is not there, or beside a mirror',
    ).toEqual([])
    const reached = (spec: string, path: string) => reachedFrom(spec, files, readProjectFile).has(path)
    // The built page and the built threads are run, not imported
    const runBuilt = ({ path, spec }: (typeof named)[number]) =>
      spec.startsWith('tests/browser/') || /Worker\.ts$/.test(path)
    expect(
      named.filter((one) => files.includes(one.spec) && !runBuilt(one) && !reached(one.spec, one.path)),
      'naming a test that does not come to it',
    ).toEqual([])
  })

  it('holds no more than 20 files in a folder beside its subfolders, so that its names can be read at one look', () => {
    // Plain lists: every file is one of a kind, and the newest is added at the end
    const lists = [
      'electron/shells/commands',
      'electron/archive/core/migrations',
      'tests/shells/commands',
      'tests/soak',
      'tests/archive/core/migrations',
    ]
    const counts = new Map<string, number>()
    for (const path of files.filter((one) => /^(electron|renderer|tests)\//.test(one)))
      counts.set(posix.dirname(path), (counts.get(posix.dirname(path)) ?? 0) + 1)
    const full = [...counts].filter(([folder, count]) => count > 20 && !lists.includes(folder))
    expect(full.map(([folder, count]) => `${folder}: ${count}`)).toEqual([])
  })

  it('keeps the desktop shell so thin that its main file stays under a hundred lines', () => {
    expect(readProjectFile('electron/shells/desktop/main.ts').split('\n').length).toBeLessThan(100)
  })

  it('runs every test: none is left out, none is alone', () => {
    // Written in two parts so that this file does not find itself.
    const shortened = new RegExp(
      `\\b(it|test|describe|suite|bench)\\.(${['on', 'ly'].join('')}|${['sk', 'ip'].join('')}|todo)\\b`,
    )
    expect(linesThat(code, (line) => shortened.test(line))).toEqual([])
  })

  it('names no folder of the machine it was written on and no package registry', () => {
    const machine = new RegExp(`(^|[^\\w.])/(${['work', 'root'].join('|')})(/|$|['"\`])`)
    const passing = (line: string) => line.includes(['', 'tmp', ''].join('/'))
    const packageHost = new RegExp(
      ['"resolved"', ': "http|registry', '\\.[a-z]|npmjs', '\\.|yarnpkg', '\\.'].join(''),
      'i',
    )
    expect(linesThat(texts, (line) => machine.test(line) || line.includes(projectFolder))).toEqual([])
    expect(
      linesThat(
        texts.filter((path) => path.endsWith('.md')),
        passing,
      ),
    ).toEqual([])
    expect(linesThat([...texts, 'package-lock.json'], (line) => packageHost.test(line))).toEqual([])
  })

  it('names a module of another folder by its alias only', () => {
    const byPath = code.flatMap((path) => {
      const specifiers = [...readProjectFile(path).matchAll(/^(?:import|export|\}).* from ['"](\.[^'"]+)['"]/gm)]
      return specifiers
        .map((match) => posix.join(posix.dirname(path), match[1] as string))
        .filter((target) => hasAlias(target) && topFolder(target) !== topFolder(path))
        .map((target) => `${path} -> ${target}`)
    })
    expect(byPath).toEqual([])
  })

  it('loads electron as a value nowhere but in main.ts and preload.ts', () => {
    const others = code.filter((path) => /^(electron|renderer)\//.test(path) && !electronEntries.includes(path))
    const importsElectron =
      /^\s*(import|export)\b.*from ['"]electron['"]|require\(['"]electron['"]\)|import\(['"]electron['"]\)/
    expect(linesThat(others, (line) => importsElectron.test(line) && !/^\s*import type\b/.test(line))).toEqual([])
  })

  it('gives the reason for every dependency in DEVELOPERS.md', () => {
    const { dependencies, devDependencies, optionalDependencies } = JSON.parse(
      readProjectFile('package.json'),
    ) as Record<'dependencies' | 'devDependencies' | 'optionalDependencies', Record<string, string>>
    const section = readProjectFile('DEVELOPERS.md').split('## Why each dependency')[1]?.split('\n## ')[0] ?? ''
    const explained = new Set(
      section
        .split('\n')
        .filter((line) => line.startsWith('| `'))
        .flatMap((line) => [...(line.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map((match) => match[1] as string)),
    )
    const used = Object.keys({ ...dependencies, ...devDependencies, ...optionalDependencies })
    expect(
      used.filter((name) => !explained.has(name)),
      'without a reason',
    ).toEqual([])
    expect(
      [...explained].filter((name) => !used.includes(name)),
      'explained but not used',
    ).toEqual([])
  })
})
