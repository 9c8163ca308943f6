import { existsSync } from 'node:fs'
import { readdir, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { inTemporaryFolder } from '#exchange/temporaryFolder.ts'
import { temporaryFolder } from '#tests/archive/storedStudy.ts'

afterEach(() => vi.unstubAllEnvs())

describe('a folder for temporary files', () => {
  it('is there for the work, and gone with all that is in it whether the work succeeds or fails', async () => {
    const [worked, failed] = [temporaryFolder(), temporaryFolder()]
    vi.stubEnv('TMPDIR', worked)
    const names = await inTemporaryFolder('made-', async (folder) => {
      await writeFile(join(folder, 'a'), '')
      return readdir(worked)
    })
    expect(names).toEqual([expect.stringMatching(/^made-/)])
    vi.stubEnv('TMPDIR', failed)
    await expect(inTemporaryFolder('made-', () => Promise.reject(new Error('a slip')))).rejects.toThrow('a slip')
    expect([await readdir(worked), await readdir(failed)]).toEqual([[], []])
  })

  it('that cannot be made is said to be so, with what to do', async () => {
    const nowhere = join(temporaryFolder(), 'nowhere')
    vi.stubEnv('TMPDIR', nowhere)
    await expect(inTemporaryFolder('made-', async () => {})).rejects.toMatchObject({
      code: 'denied',
      message: expect.stringContaining(`Temporary files cannot be written in ${nowhere} (ENOENT`),
      hint: expect.stringContaining('TMPDIR'),
    })
    expect(existsSync(nowhere)).toBe(false)
  })

  it('that has no room is said to have none', async () => {
    const full = Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' })
    await expect(inTemporaryFolder('made-', () => Promise.reject(full))).rejects.toMatchObject({
      code: 'disk-full',
      message: `Temporary files cannot be written in ${tmpdir()} (ENOSPC: no space left on device).`,
    })
  })
})
