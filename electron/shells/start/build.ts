import { createHash } from 'node:crypto'
import { existsSync, globSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { licenceTexts } from './licences.ts'
import { replaceFolder } from './replaceFolder.ts'

/** The project's own folder. */
export const projectFolder = fileURLToPath(new URL('../../..', import.meta.url))

/** Packages that stay outside the bundles: Electron itself, and those with native parts. */
export const nativePackages = ['better-sqlite3', 'serialport', '@lydell/node-pty'] as const

type Part = { sources: string[]; products: string[]; build(): Promise<void> }

const always = ['package.json', 'package-lock.json', 'vite.config.ts', 'electron/shells/start/build.ts']

/** What runs in a thread of its own. */
const threads = [
  { name: 'archiveWorker', source: 'electron/archive/archiveWorker.ts' },
  { name: 'reevaluationWorker', source: 'electron/engine/reevaluation/reevaluationWorker.ts' },
  { name: 'findingsWorker', source: 'electron/engine/findings/findingsWorker.ts' },
  { name: 'climateWorker', source: 'electron/engine/findings/climate/climateWorker.ts' },
] as const

const parts = {
  page: {
    sources: [
      ...always,
      'LICENSE',
      'renderer/**',
      'electron/{contract,domain,words,figures}/**',
      'electron/shells/start/licences*',
    ],
    products: ['dist/renderer/index.html', 'dist/renderer/licences.txt'],
    async build() {
      // A test runner sets this to "test"; the page that it builds must still be the one that is shipped.
      process.env.NODE_ENV = 'production'
      const vite = await import('vite')
      // Beside the page that a running program may be serving.
      const fresh = join(projectFolder, 'dist/.page-new')
      await vite.build({
        configFile: join(projectFolder, 'vite.config.ts'),
        logLevel: 'warn',
        build: { outDir: fresh, emptyOutDir: true },
      })
      // A file of the page, so that both hosts serve it as they serve the rest.
      writeFileSync(join(fresh, 'licences.txt'), licenceTexts(projectFolder))
      replaceFolder(fresh, join(projectFolder, 'dist/renderer'))
    },
  },
  preload: {
    sources: [...always, 'electron/shells/desktop/{preload,channels}.ts'],
    products: ['dist/desktop/preload.cjs'],
    build: () => bundle('electron/shells/desktop/preload.ts', 'dist/desktop/preload.cjs', 'cjs'),
  },
  desktop: {
    sources: [...always, 'electron/**'],
    products: ['dist/desktop/main.js', 'dist/desktop/commands.js'],
    async build() {
      await bundle('electron/shells/desktop/main.ts', 'dist/desktop/main.js', 'es')
      await bundle('electron/shells/commands/main.ts', 'dist/desktop/commands.js', 'es')
    },
  },
  threads: {
    sources: [...always, 'electron/**'],
    products: threads.map(({ name }) => `dist/threads/${name}.js`),
    async build() {
      // Beside the files that a running program may be about to start.
      for (const { name, source } of threads) await bundle(source, `dist/.threads-new/${name}.js`, 'es')
      replaceFolder(join(projectFolder, 'dist/.threads-new'), join(projectFolder, 'dist/threads'))
    },
  },
} as const satisfies Record<string, Part>

/** page: what both hosts show. threads: what every host starts beside itself. preload and desktop: what Electron runs. */
export type PartName = keyof typeof parts

/**
 * Builds a part unless its products were made from exactly these sources; true when it was built. A second process that
 * wants the same part waits for the first.
 */
export async function buildIfNeeded(name: PartName): Promise<boolean> {
  const part: Part = parts[name]
  const stampFile = join(projectFolder, `dist/.${name}-sources`)
  const stamp = fingerprint(part.sources)
  const stands = () =>
    part.products.every((file) => existsSync(join(projectFolder, file))) &&
    existsSync(stampFile) &&
    readFileSync(stampFile, 'utf8') === stamp
  if (stands()) return false
  const unlock = await lock(`dist/.${name}-building`)
  try {
    if (stands()) return false
    rmSync(stampFile, { force: true })
    await part.build()
    writeFileSync(stampFile, stamp)
    return true
  } finally {
    unlock()
  }
}

/** A build takes seconds; a lock older than this was left by a process that was ended. */
const staleLockMs = 60_000

/** Holds a folder as a lock, since making one either succeeds or fails in one step on every system. */
async function lock(name: string): Promise<() => void> {
  const folder = join(projectFolder, name)
  mkdirSync(join(projectFolder, 'dist'), { recursive: true })
  for (;;) {
    try {
      mkdirSync(folder)
      return () => rmSync(folder, { recursive: true, force: true })
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
      const made = statSync(folder, { throwIfNoEntry: false })?.mtimeMs ?? Date.now()
      if (Date.now() - made > staleLockMs) rmSync(folder, { recursive: true, force: true })
      else await new Promise((resolve) => setTimeout(resolve, 100))
    }
  }
}

/** Changes whenever a source file is added, removed or written. */
function fingerprint(patterns: readonly string[]): string {
  const hash = createHash('sha256')
  for (const file of globSync([...patterns], { cwd: projectFolder }).sort()) {
    const { mtimeMs, size } = statSync(join(projectFolder, file))
    hash.update(`${file}\0${mtimeMs}\0${size}\0`)
  }
  return hash.digest('hex')
}

/** Bundles one entry for Node; a sandboxed preload can only be CommonJS, all else is an ES module. */
async function bundle(entry: string, product: string, format: 'es' | 'cjs'): Promise<void> {
  const vite = await import('vite')
  await vite.build({
    configFile: false,
    root: projectFolder,
    logLevel: 'warn',
    ssr: { noExternal: true, external: ['electron', ...nativePackages] },
    build: {
      ssr: true,
      outDir: dirname(product),
      emptyOutDir: false,
      target: 'node24',
      minify: false,
      rolldownOptions: {
        input: entry,
        output: { format, entryFileNames: basename(product), codeSplitting: false },
      },
    },
  })
}

export const partNames = Object.keys(parts) as PartName[]

if (import.meta.main) {
  for (const name of partNames) {
    const startedAt = performance.now()
    const built = await buildIfNeeded(name)
    const seconds = ((performance.now() - startedAt) / 1000).toFixed(1)
    console.log(built ? `${name}: built in ${seconds} s` : `${name}: up to date`)
  }
}
