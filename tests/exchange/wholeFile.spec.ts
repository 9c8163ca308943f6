import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { writeWholeFile } from '#exchange/wholeFile.ts'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'breakledger-whole-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

it('puts the new content in place of the old', async () => {
  const file = join(folder, 'pulls.ics')
  await writeFile(file, 'older and longer')
  await writeWholeFile(file, 'newer')
  expect(await readFile(file, 'utf8')).toBe('newer')
  expect(await readdir(folder)).toEqual(['pulls.ics'])
})

it('names the file that cannot be written, and leaves nothing half done', async () => {
  await expect(writeWholeFile(join(folder, 'gone', 'a.pdf'), '')).rejects.toMatchObject({ code: 'invalid-input' })
  await mkdir(join(folder, 'place'))
  await expect(writeWholeFile(join(folder, 'place'), '')).rejects.toMatchObject({
    message: expect.stringContaining('place is a folder'),
  })
  expect(await readdir(folder)).toEqual(['place'])
})
