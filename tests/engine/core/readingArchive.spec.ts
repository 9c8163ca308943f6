import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { listQuery } from '#contract/listQuery.ts'
import { readingArchive } from '#engine/core/readingArchive.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

const total = async (reader: Archive) => (await reader.listSpecimens(listQuery.parse({}))).total

it('reads what was stored last, by another connection than the one that stores, which is kept', async () => {
  const reading = readingArchive(home.archive, 'test')
  const readers = new Set<Archive>()
  const seen = (reader: Archive) => {
    readers.add(reader)
    return total(reader)
  }
  expect(await reading.ask(seen)).toBe(0)
  await addBlocks(home.archive, ['A-1', 'A-2'])
  expect(await reading.ask(seen)).toBe(2)
  expect(readers.size).toBe(1)
  expect(readers).not.toContain(home.archive)
  await reading.close()
})

it('cannot write', async () => {
  const reading = readingArchive(home.archive, 'test')
  await expect(reading.ask((reader) => addBlocks(reader, ['A-1']))).rejects.toMatchObject({ code: 'archive-read-only' })
  await reading.close()
})

it('tries again where it did not open, and has nothing to close', async () => {
  let missing = true
  const info: Archive['info'] = async () => {
    const found = await home.archive.info()
    return missing ? { ...found, path: `${found.path}-elsewhere` } : found
  }
  const reading = readingArchive({ info }, 'test')
  await expect(reading.ask(total)).rejects.toMatchObject({ code: 'archive-missing' })
  missing = false
  expect(await reading.ask(total)).toBe(0)
  await reading.close()
  missing = true
  const unopened = readingArchive({ info }, 'test')
  await expect(unopened.ask(total)).rejects.toMatchObject({ code: 'archive-missing' })
  await unopened.close()
})

it('opens the archive no more once it is closed: nobody would close it again', async () => {
  let asked = 0
  const info: Archive['info'] = () => {
    asked += 1
    return home.archive.info()
  }
  const reading = readingArchive({ info }, 'test')
  await reading.close()
  await expect(reading.ask(total)).rejects.toMatchObject({ code: 'cancelled' })
  expect(asked).toBe(0)
})
