import { createHash } from 'node:crypto'
import { existsSync, globSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's own folder. */
export const projectFolder = fileURLToPath(new URL('..', import.meta.url))

/** Packages that stay outside the bundles: Electron itself, and those with native parts. */
export const nativePackages = ['better-sqlite3', 'serialport'] as const

type Part = { sources: string[]; products: string[]; build(): Promise<void> }

const always = ['package.json', 'package-lock.json', 'vite.config.ts', 'scripts/build.ts']

const parts = {
  page: {
    sources: [...always, 'renderer/**', 'electron/contract/**', 'electron/domain/**'],
    products: ['dist/renderer/index.html'],
    async build() {
      const vite = await import('vite')
      await vite.build({ configFile: join(projectFolder, 'vite.config.ts'), logLevel: 'warn' })
    },
  },
  desktop: {
    sources: [...always, 'electron/**'],
    products: ['dist/desktop/main.js', 'dist/desktop/preload.cjs', 'dist/desktop/archiveWorker.js'],
    async build() {
      rmSync(join(projectFolder, 'dist/desktop'), { recursive: true, force: true })
      await bundle('electron/shells/desktop/main.ts', 'main.js', 'es')
      await bundle('electron/archive/archiveWorker.ts', 'archiveWorker.js', 'es')
      await bundle('electron/shells/desktop/preload.ts', 'preload.cjs', 'cjs')
    },
  },
} as const satisfies Record<string, Part>

/** page: what both hosts show. desktop: what Electron runs. */
export type PartName = keyof typeof parts

/** Builds a part unless its products were made from exactly these sources; true when it was built. */
export async function buildIfNeeded(name: PartName): Promise<boolean> {
  const part: Part = parts[name]
  const stampFile = join(projectFolder, `dist/.${name}-sources`)
  const stamp = fingerprint(part.sources)
  const stands = part.products.every((file) => existsSync(join(projectFolder, file)))
  if (stands && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return false
  rmSync(stampFile, { force: true })
  await part.build()
  mkdirSync(join(projectFolder, 'dist'), { recursive: true })
  writeFileSync(stampFile, stamp)
  return true
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
    plugins: [{ name: 'bundled-worker', transform: nameBundledWorker }],
    ssr: { noExternal: true, external: ['electron', ...nativePackages] },
    build: {
      ssr: true,
      outDir: 'dist/desktop',
      emptyOutDir: false,
      target: 'node24',
      minify: false,
      rolldownOptions: {
        input: entry,
        output: { format, entryFileNames: product, codeSplitting: false },
      },
    },
  })
}

/** In the bundle the archive's worker lies beside the main file, as JavaScript. */
function nameBundledWorker(code: string): string | null {
  const inSource = "new URL('./archiveWorker.ts', import.meta.url)"
  return code.includes(inSource) ? code.replace(inSource, "new URL('./archiveWorker.js', import.meta.url)") : null
}

if (import.meta.main) {
  for (const name of Object.keys(parts) as PartName[]) {
    const startedAt = performance.now()
    const built = await buildIfNeeded(name)
    const seconds = ((performance.now() - startedAt) / 1000).toFixed(1)
    console.log(built ? `${name}: built in ${seconds} s` : `${name}: up to date`)
  }
}
