import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join, matchesGlob } from 'node:path'
import { promisify } from 'node:util'
import { extractAll, getRawHeader } from '@electron/asar'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { buildIfNeeded, partNames, projectFolder } from '#shells/start/build.ts'

const run = promisify(execFile)

/** Before a binary's fuses stand these letters, their version and their number; 0 is off, 1 on. See Electron's documents on fuses. */
const fuseMark = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'
const binaryWithFuses = `#!/bin/sh\nprintf '%s\\n' "$@"\nexit 3\n# ${fuseMark}\x01\x0810110001\n`

type Packed = {
  integrity: { algorithm: string; hash: string; blockSize: number; blocks: string[] }
  unpacked?: boolean
}
type Folder = { files: Record<string, Packed | Folder> }

/** Every file of the archive by its path, as the archive's own head lists it. */
function listed({ files }: Folder, above = ''): Map<string, Packed> {
  return new Map(
    Object.entries(files).flatMap(([name, entry]) =>
      'files' in entry ? [...listed(entry, `${above}${name}/`)] : [[`${above}${name}`, entry] as const],
    ),
  )
}

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/** Every system that the native packages are packed for, as the packages name it, with its key in the configuration. */
const systems = [
  ...['x64', 'arm64'].map((arch) => ({ key: 'linux', arch, serial: `linux-${arch}`, sqlite: `linux-${arch}` })),
  ...['x64', 'arm64'].map((arch) => ({ key: 'win', arch, serial: `win32-${arch}`, sqlite: `win32-${arch}` })),
  ...['x64', 'arm64'].map((arch) => ({ key: 'mac', arch, serial: 'darwin-x64+arm64', sqlite: `darwin-${arch}` })),
]

test.each(systems)(
  'what is packed for $key on $arch keeps its native parts, and those alone',
  ({ key, arch, ...own }) => {
    const configuration = createRequire(import.meta.url)(join(projectFolder, 'electron-builder.config.cjs'))
    const left: string[] = configuration[key].files
      .filter((pattern: string) => pattern.startsWith('!'))
      .map((pattern: string) => pattern.slice(1).replaceAll(/\$\{arch\}/g, arch))
    const native = ['better-sqlite3', '@serialport/bindings-cpp'].flatMap((name) =>
      readdirSync(join(projectFolder, 'node_modules', name, 'prebuilds'), { recursive: true })
        .map((file) => `node_modules/${name}/prebuilds/${file}`)
        .filter((file) => file.endsWith('.node')),
    )
    const packed = native.filter((file) => !left.some((pattern) => matchesGlob(file, pattern)))
    const isOwn = (file: string) =>
      file.includes(`/prebuilds/${own.serial}/`) || file.endsWith(`/prebuilds/${own.sqlite}.node`)
    expect(packed).toEqual(native.filter(isOwn))
    expect(new Set(packed.map((file) => file.split('/prebuilds/')[0])).size).toBe(2)
  },
)

/** Packs with a stand-in for Electron's own files, which cannot be fetched everywhere; all that is ours is packed as ever. */
describe.skipIf(process.platform !== 'linux')('the packed program', () => {
  let folder: string
  /** The folder of resources, beside the binary. */
  let packed: string
  /** What the archive of the program holds, and the same as files. */
  let entries: ReadonlyMap<string, Packed>
  let files: string[]
  let unfolded: string

  beforeAll(async () => {
    for (const part of partNames) await buildIfNeeded(part)
    folder = mkdtempSync(join(tmpdir(), 'breakledger-packed-'))
    const electron = join(folder, 'electron')
    mkdirSync(join(electron, 'resources'), { recursive: true })
    writeFileSync(join(electron, 'electron'), binaryWithFuses)
    chmodSync(join(electron, 'electron'), 0o755)
    const { version } = JSON.parse(readFileSync(join(projectFolder, 'node_modules/electron/package.json'), 'utf8'))
    for (const [name, text] of Object.entries({ version, LICENSE: 'x', 'LICENSES.chromium.html': 'x' }))
      writeFileSync(join(electron, name), text)
    await run(
      process.execPath,
      [
        join(projectFolder, 'node_modules/electron-builder/cli.js'),
        ...['--config', 'electron-builder.config.cjs', '--linux', '--dir'],
        `-c.electronDist=${electron}`,
        `-c.directories.output=${join(folder, 'out')}`,
      ],
      { cwd: projectFolder },
    )
    const unpacked = readdirSync(join(folder, 'out')).find((name) => name.endsWith('unpacked'))
    packed = join(folder, 'out', unpacked ?? '', 'resources')
    const archive = join(packed, 'app.asar')
    entries = listed(getRawHeader(archive).header as unknown as Folder)
    files = [...entries.keys()]
    unfolded = join(folder, 'unfolded')
    extractAll(archive, unfolded)
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test('holds what the window, the commands and the archive run', () => {
    for (const file of ['main.js', 'preload.cjs', 'commands.js']) expect(files).toContain(`dist/desktop/${file}`)
    for (const file of ['archiveWorker.js', 'reevaluationWorker.js', 'findingsWorker.js', 'climateWorker.js'])
      expect(files).toContain(`dist/threads/${file}`)
    expect(files).toContain('dist/renderer/index.html')
    const scripts = files.filter((file) => /^dist\/renderer\/assets\/.*\.js$/.test(file))
    expect(scripts.map((file) => file.match(/assets\/(\w+)-/)?.[1]).toSorted()).toEqual(['index', 'pictureWorker'])
    expect(files).toContain('LICENSE')
    expect(files).toContain('dist/renderer/licences.txt')
  })

  test('holds the native parts for this system, and only for this one', () => {
    const native = files.filter((file) => file.endsWith('.node'))
    expect(native).toContain(`node_modules/better-sqlite3/prebuilds/linux-${process.arch}.node`)
    expect(native.some((file) => file.includes(`bindings-cpp/prebuilds/linux-${process.arch}/`))).toBe(true)
    expect(native.filter((file) => !file.includes(`linux-${process.arch}`))).toEqual([])
  })

  test('is one archive that knows the hash of every file, native parts alone beside it', () => {
    expect(readdirSync(packed).sort()).toEqual([
      'app.asar',
      'app.asar.unpacked',
      'breakledger-command',
      'breakledger-command.cmd',
    ])
    for (const [file, { integrity, unpacked = false }] of entries) {
      const bytes = readFileSync(join(unfolded, file))
      expect({ file, unpacked }).toEqual({ file, unpacked: file.endsWith('.node') })
      expect({ file, algorithm: integrity.algorithm, hash: integrity.hash }).toEqual({
        file,
        algorithm: 'SHA256',
        hash: hashOf(bytes),
      })
      if (file.startsWith('dist/')) expect(bytes).toEqual(readFileSync(join(projectFolder, file)))
    }
  })

  test('runs no script as plain Node and no code but the archive, and heeds no inspector and no options of Node', () => {
    const binary = readFileSync(join(packed, '../breakledger'), 'latin1')
    const fuses = binary.slice(binary.indexOf(fuseMark) + fuseMark.length + 2)
    const [asNode, cookieEncryption, nodeOptions, inspector, integrity, archiveOnly, , filePrivileges] = fuses
    expect({ asNode, cookieEncryption, nodeOptions, inspector, integrity, archiveOnly, filePrivileges }).toEqual({
      asNode: '0',
      cookieEncryption: '1',
      nodeOptions: '0',
      inspector: '0',
      integrity: '1',
      archiveOnly: '1',
      filePrivileges: '0',
    })
  })

  test('holds no source, no test and no second Node', () => {
    expect(files.filter((file) => /^(electron|renderer|tests|scripts|samples)/.test(file))).toEqual([])
    expect(files.filter((file) => file.endsWith('.ts'))).toEqual([])
    expect(files.filter((file) => /^node_modules\/node-(linux|bin)/.test(file))).toEqual([])
  })

  test('has a launcher that starts the program for a command, from wherever it is called, and hands on its exit code', async () => {
    const link = join(folder, 'breakledger-command')
    symlinkSync(join(packed, 'breakledger-command'), link)
    const { PATH = '' } = process.env
    const start = (environment: Record<string, string>) =>
      run(link, ['verify', '--archive', 'a b'], { env: { PATH, ...environment } }).catch((failed: unknown) => failed)
    expect(await start({})).toMatchObject({
      code: 3,
      stdout: '--ozone-platform=headless\n--command\nverify\n--archive\na b\n',
    })
    expect(await start({ DISPLAY: ':0' })).toMatchObject({ code: 3, stdout: '--command\nverify\n--archive\na b\n' })
  })

  test('finds its native parts, its threads and all else from its own place', async () => {
    const archive = join(folder, 'packed.breakledger')
    const command = (...words: string[]) =>
      run(process.execPath, [join(unfolded, 'dist/desktop/commands.js'), ...words], { cwd: folder })
    await command('demo', '--archive', archive)
    expect(existsSync(archive)).toBe(true)
    const { stdout } = await command('verify', '--archive', archive, '--json')
    expect(stdout).toContain('"sound":true')
    expect((await command('ports', '--json')).stderr).toBe('')
  })
})
