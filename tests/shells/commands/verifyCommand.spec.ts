import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { openHere } from '#archive/openHere.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { morning, storeBreak, temporaryFolder } from '../../archive/storedStudy.ts'

function study(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const { database, close } = openHere({ path, mode: 'write', program: 'test', instant: morning })
  storeBreak(database, null)
  close()
  return path
}

it('prints the head of the chain, and takes it back as one that was written down', async () => {
  const words = ['verify', '--archive', study()]
  const { out } = await runWords(commands, words)
  const head = /^head of the chain: (\S+)$/m.exec(out)![1]!
  expect((await runWords(commands, [...words, '--head', head])).code).toBe(0)
  const [count, hash] = head.split(':')
  const longer = await runWords(commands, [...words, '--head', `${Number(count) + 1}:${hash}`])
  expect(longer.code).toBe(1)
  expect(longer.out).toMatch(/head written down .*: the chain is shorter/)
  expect((await runWords(commands, [...words, '--head', 'here'])).code).toBe(2)
})

it('names a trigger that is gone, and repair mends it', async () => {
  const path = study()
  new Database(path).exec('DROP TRIGGER ledger_is_never_changed').close()
  const words = ['--archive', path]
  expect((await runWords(commands, ['verify', ...words])).out).toMatch(/ledger_is_never_changed: it is missing/)
  expect(await runWords(commands, ['repair', ...words])).toMatchObject({
    code: 0,
    out: expect.stringMatching(/trigger ledger_is_never_changed: mended\n.*as it was: .*before-repair/),
  })
  expect((await runWords(commands, ['verify', ...words])).code).toBe(0)
  const { lines } = await runWords(commands, ['repair', '--json', ...words])
  expect(lines).toEqual([{ archive: path, copy: null, mended: [], left: [] }])
})

// A shell elsewhere may count the limit in another unit, or know none
it.runIf(process.platform === 'linux')('reads an archive where there is no room for the index of its journal', () => {
  const command = join(import.meta.dirname, '../../../electron/shells/start/command.ts')
  const words = [process.execPath, command, 'verify', '--archive', study()]
  // No file may hold a byte more, as on a disk that is full
  const { status, stdout, stderr } = spawnSync('sh', ['-c', 'ulimit -f 0; exec "$0" "$@"', ...words], {
    encoding: 'utf8',
    env: { ...process.env, XDG_DATA_HOME: temporaryFolder() },
  })
  expect([status, stderr]).toEqual([0, ''])
  expect(stdout).toMatch(/1 break, .*: sound$/m)
})
