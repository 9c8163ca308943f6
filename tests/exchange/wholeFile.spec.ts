import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { lstat, mkdir, mkdtemp, open, readdir, readFile, realpath, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
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

it.skipIf(!existsSync('/dev/full'))('says that there is no room where there is none', async () => {
  await expect(writeWholeFile('/dev/full', 'all')).rejects.toMatchObject({
    code: 'disk-full',
    message: 'The disk has no room for /dev/full.',
  })
})

it('writes over no archive, whatever its name', async () => {
  const [file, link] = [join(folder, 'study'), join(folder, 'labels.pdf')]
  const archive = new Database(file)
  archive.exec('CREATE TABLE kept (id INTEGER PRIMARY KEY)').close()
  await symlink('study', link)
  for (const named of [file, link])
    await expect(writeWholeFile(named, '%PDF')).rejects.toMatchObject({
      code: 'conflict',
      message: `${await realpath(file)} is an archive, or another database, and is not written over.`,
    })
  expect((await readFile(file, 'latin1')).slice(0, 15)).toBe('SQLite format 3')
  expect((await readdir(folder)).sort()).toEqual(['labels.pdf', 'study'])
})

it('writes to a pipe as to a device, and puts no file in its place', async () => {
  const pipe = join(folder, 'pipe')
  execFileSync('mkfifo', [pipe])
  const reader = await open(pipe, 'r+')
  await writeWholeFile(pipe, 'BEGIN')
  const { buffer, bytesRead } = await reader.read(Buffer.alloc(10), 0, 10)
  await reader.close()
  expect(buffer.toString('utf8', 0, bytesRead)).toBe('BEGIN')
  expect((await lstat(pipe)).isFIFO()).toBe(true)
})

it('follows a link to the file that is replaced', async () => {
  await writeFile(join(folder, 'kept.ics'), 'older')
  await symlink('kept.ics', join(folder, 'link.ics'))
  await writeWholeFile(join(folder, 'link.ics'), 'newer')
  expect(await readFile(join(folder, 'kept.ics'), 'utf8')).toBe('newer')
  expect((await lstat(join(folder, 'link.ics'))).isSymbolicLink()).toBe(true)
})

it('takes a name as long as names can be, and says of a longer one that it is too long', async () => {
  await writeWholeFile(join(folder, 'x'.repeat(255)), 'all')
  await expect(writeWholeFile(join(folder, 'x'.repeat(256)), '')).rejects.toMatchObject({ code: 'invalid-input' })
})
