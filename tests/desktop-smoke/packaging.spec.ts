import { execFile } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { buildIfNeeded, partNames, projectFolder } from '#shells/start/build.ts'

const run = promisify(execFile)

/** Before a binary's fuses stand these letters, their version and their number; 0 is off, 1 on. See Electron's documents on fuses. */
const fuseMark = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'
const binaryWithFuses = `#!/bin/sh\n# ${fuseMark}\x01\x0810110001\n`

/** Packs with a stand-in for Electron's own files, which cannot be fetched everywhere; all that is ours is packed as ever. */
describe.skipIf(process.platform !== 'linux')('the packed program', () => {
  let folder: string
  let packed: string
  let files: string[]

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
    files = readdirSync(packed, { recursive: true }).map(String)
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test('holds what the window, the commands and the archive run', () => {
    for (const file of ['main.js', 'preload.cjs', 'commands.js']) expect(files).toContain(`app/dist/desktop/${file}`)
    for (const file of ['archiveWorker.js', 'reevaluationWorker.js'])
      expect(files).toContain(`app/dist/threads/${file}`)
    expect(files).toContain('app/dist/renderer/index.html')
    expect(files.filter((file) => /^app\/dist\/renderer\/assets\/.*\.js$/.test(file))).toHaveLength(1)
    expect(files).toContain('app/LICENSE')
    expect(files).toContain('app/dist/licences.txt')
    expect(files).toContain('breakledger-command')
  })

  test('holds the native parts for this system, and only for this one', () => {
    const native = files.filter((file) => file.endsWith('.node'))
    expect(native).toContain(`app/node_modules/better-sqlite3/prebuilds/linux-${process.arch}.node`)
    expect(native.some((file) => file.includes(`bindings-cpp/prebuilds/linux-${process.arch}/`))).toBe(true)
    expect(native.filter((file) => /win32|darwin-arm64\.node|android/.test(file))).toEqual([])
  })

  test('runs no script as plain Node, and heeds no inspector and no options of Node', () => {
    const binary = readFileSync(join(packed, '../breakledger'), 'latin1')
    const [asNode, cookieEncryption, nodeOptions, inspector] = binary.slice(
      binary.indexOf(fuseMark) + fuseMark.length + 2,
    )
    expect({ asNode, cookieEncryption, nodeOptions, inspector }).toEqual({
      asNode: '0',
      cookieEncryption: '1',
      nodeOptions: '0',
      inspector: '0',
    })
  })

  test('holds no source, no test and no second Node', () => {
    expect(files.filter((file) => /^app\/(electron|renderer|tests|scripts|samples)/.test(file))).toEqual([])
    expect(files.filter((file) => file.endsWith('.ts'))).toEqual([])
    expect(readdirSync(join(packed, 'app/node_modules')).filter((name) => name.startsWith('node-linux'))).toEqual([])
  })

  test('runs its commands from where it was packed, native parts and archive thread included', async () => {
    const archive = join(folder, 'packed.breakledger')
    const command = (...words: string[]) =>
      run(process.execPath, [join(packed, 'app/dist/desktop/commands.js'), ...words], { cwd: folder })
    await command('demo', '--archive', archive)
    expect(existsSync(archive)).toBe(true)
    const { stdout } = await command('verify', '--archive', archive, '--json')
    expect(stdout).toContain('"sound":true')
    expect((await command('ports', '--json')).stderr).toBe('')
  })
})
