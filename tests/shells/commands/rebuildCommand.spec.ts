import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { openHere } from '#archive/openHere.ts'
import { commands } from '#shells/commands/commands.ts'
import { runWords } from '#tests/fakes/commandRun.ts'
import { morning, storeBreak, temporaryFolder } from '../../archive/storedStudy.ts'

/** An archive with one break, whose list says something else than its records. */
function lyingArchive(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  const { database, close } = openHere({ path, mode: 'write', program: 'test', instant: morning })
  storeBreak(database, null)
  database.exec('UPDATE break_current SET peak_n = 1')
  close()
  return path
}

describe('rebuild', () => {
  it('mends the lists that verify complains of, as verify says', async () => {
    const words = ['--archive', lyingArchive()]
    const before = await runWords(commands, ['verify', ...words])
    expect(before.code).toBe(1)
    expect(before.out).toMatch(/break 1: the list of breaks shows something else .*command rebuild/)
    const { code, out } = await runWords(commands, ['rebuild', ...words])
    expect(code).toBe(0)
    expect(out).toMatch(/0 specimens and 1 break were made again/)
    expect((await runWords(commands, ['verify', ...words])).code).toBe(0)
  })

  it('prints what it listed with --json', async () => {
    const path = lyingArchive()
    const { lines } = await runWords(commands, ['rebuild', '--json', '--archive', path])
    expect(lines).toEqual([{ archive: path, specimens: 0, breaks: 1 }])
  })

  it('makes no archive where there is none', async () => {
    const path = join(temporaryFolder(), 'none.breakledger')
    const { code, err } = await runWords(commands, ['rebuild', '--archive', path])
    expect(code).toBe(1)
    expect(err).toContain('There is no archive')
    expect(existsSync(path)).toBe(false)
  })
})
