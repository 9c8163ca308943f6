import { copyFileSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { readKeptHeads } from '#engine/keeping/keptHeads.ts'
import { verifyArchive } from '#engine/keeping/verifyArchive.ts'
import { watchChain } from '#engine/keeping/watchChain.ts'
import { morning, specimenFields, temporaryFolder } from '../../archive/storedStudy.ts'

const program = 'breakledger test'

async function open(path: string): Promise<Archive> {
  const archive = await openArchive({ path, program, clockInstant: () => morning })
  onTestFinished(() => archive.close())
  return archive
}

const add = (archive: Archive, number: string) => archive.addSpecimen(specimenFields(number), morning, 'bench')

/** An archive whose third specimen lies in its journal alone, as a program that was killed leaves it, and the kept head. */
async function killed() {
  const folder = temporaryFolder()
  const [running, path, file] = ['running', 'study.breakledger', 'heads.json'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ]
  const archive = await open(running)
  await add(archive, 'C1-LL-1')
  const watch = await watchChain(archive, file)
  await add(archive, 'C1-LL-2')
  await archive.settle()
  await add(archive, 'C1-LL-3')
  await watch.close()
  for (const ending of ['', '-wal']) copyFileSync(running + ending, path + ending)
  return { running, path, file, archive }
}

const verified = (
  path: string,
  file: string,
  accept = false,
  writtenDown: { count: number; hash: string } | null = null,
) => verifyArchive(path, program, { keptIn: file, writtenDown, accept }, () => {}, new AbortController().signal)

test('keeps the head of every record that was acknowledged', async () => {
  const { file, archive } = await killed()
  const { path } = await archive.info()
  expect(Object.values(readKeptHeads(file))).toEqual([{ ...(await archive.chainHead()), path }])
})

test('finds nothing where the journal is still there', async () => {
  const { path, file } = await killed()
  const watch = await watchChain(await open(path), file)
  expect(watch.finding).toBeNull()
  await watch.close()
})

test('notices a copy without its journal at every opening and in verify, until a person accepts it', async () => {
  const { running, file } = await killed()
  const path = `${running}-copy`
  copyFileSync(running, path)
  expect(await verified(path, file)).toMatchObject({
    sound: false,
    faults: [
      { where: expect.stringMatching(/^head kept by the program \d+:/), what: expect.stringMatching(/shorter/) },
    ],
  })
  for (const number of ['C1-LL-4', 'C1-LL-5']) {
    const archive = await open(path)
    const watch = await watchChain(archive, file)
    expect(watch.finding).not.toBeNull()
    await add(archive, number)
    await watch.close()
    await archive.close()
  }
  expect(await verified(path, file)).toMatchObject({ faults: [{ what: expect.stringMatching(/another entry/) }] })
  expect((await verified(path, file, true)).sound).toBe(true)
  expect((await watchChain(await open(path), file)).finding).toBeNull()
})

test('is held by verify against a head that was written down', async () => {
  const { path, file } = await killed()
  const head = (await verified(path, file)).head!
  expect((await verified(path, file, false, head)).sound).toBe(true)
  const more = { count: head.count + 1, hash: head.hash }
  expect(await verified(path, file, false, more)).toMatchObject({
    sound: false,
    faults: [{ where: `head written down ${more.count}:${more.hash}` }],
  })
})

test('leaves nothing in the journal once it is settled', async () => {
  const { running, archive } = await killed()
  expect(readFileSync(`${running}-wal`).length).toBeGreaterThan(0)
  await archive.settle()
  expect(readFileSync(`${running}-wal`).length).toBe(0)
})

/** Two archives with a specimen each, both watched and closed. */
async function twoArchives() {
  const folder = temporaryFolder()
  const file = join(folder, 'heads.json')
  const paths = ['spring', 'autumn'].map((name) => join(folder, name))
  for (const [i, path] of paths.entries()) {
    const archive = await openArchive({ path, program, clockInstant: () => `2031-0${i + 1}-02T09:30:00.000Z` })
    const watch = await watchChain(archive, file)
    await add(archive, `C1-LL-${i}`)
    await watch.close()
    await archive.close()
  }
  return { file, spring: paths[0]!, autumn: paths[1]! }
}

test('notices another archive where one lay, at opening and in verify, until a person accepts it', async () => {
  const { file, spring, autumn } = await twoArchives()
  rmSync(spring)
  renameSync(autumn, spring)
  expect((await watchChain(await open(spring), file)).finding).toBe('other')
  expect(await verified(spring, file)).toMatchObject({
    faults: [{ what: expect.stringMatching(/another archive lay/) }],
  })
  expect((await verified(spring, file, true)).sound).toBe(true)
})

test('takes an archive that was moved, and one that is begun anew where another lay, for what they are', async () => {
  const { file, spring } = await twoArchives()
  renameSync(spring, `${spring}-moved`)
  for (const path of [`${spring}-moved`, spring]) {
    const archive = await open(path)
    const watch = await watchChain(archive, file)
    expect(watch.finding).toBeNull()
    await watch.close()
    await archive.close()
  }
  expect((await verified(spring, file)).sound).toBe(true)
})
