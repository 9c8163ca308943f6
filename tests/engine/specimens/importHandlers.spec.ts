import { afterEach, beforeEach, expect, test } from 'vitest'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
let made: Awaited<ReturnType<typeof benchEngine>>
beforeEach(async () => {
  home = await temporaryArchive()
  made = await benchEngine(home.archive)
})
afterEach(async () => {
  await made.engine.close()
  await home.remove()
})

const bytesOf = (text: string) => new TextEncoder().encode(text)
const fromHex = (digits: string) => new Uint8Array(Buffer.from(digits, 'hex'))
const table = { name: 'blocks.csv', content: bytesOf('Adhesive,Load (N)\nC1,4800\nC1,many\nE4,5100\n') }
const unsaid = { sheet: null, headerRow: null, delimiter: null, encoding: null }

test('looks at a file, tries the mapping proposed, brings it in once, and sets it aside again', async () => {
  const { handlers } = made
  const { proposed } = await handlers['imports.look']({ ...table, ...unsaid })
  const tried = await handlers['imports.try']({ ...table, mapping: proposed })
  expect(tried.summary).toMatchObject({ new: 2, rejected: 1, dryRun: true })
  expect(await handlers['imports.list']({})).toEqual([])
  const done = await handlers['imports.run']({ ...table, mapping: proposed, by: 'Ada' })
  expect(done.fates.map(({ fate }) => fate)).toEqual(['new', 'rejected', 'new'])
  const again = await handlers['imports.run']({ ...table, mapping: proposed, by: 'Ada' })
  expect(again.summary).toMatchObject({ new: 0, alreadyThere: 2 })
  const [run, ...others] = await handlers['imports.list']({})
  expect(others).toEqual([])
  expect(run).toMatchObject({ fileName: 'blocks.csv', by: 'Ada', results: 2, inUse: 2 })
  const { importRunId } = run!
  expect(
    await handlers['imports.decide']({
      importRunId,
      kind: 'set-aside',
      cause: null,
      by: 'Ada',
      reason: 'other blocks',
    }),
  ).toBe(2)
  expect((await handlers['imports.list']({}))[0]!.inUse).toBe(0)
})

const mapping: ImportMapping = {
  headerRow: 1,
  layout: 'row-per-specimen',
  fields: { adhesive: { column: 'Adhesive' }, load: { column: 'Load', unit: 'N' } },
}
const large = (rows: number) => ({
  name: 'large.csv',
  content: bytesOf(`Adhesive,Load\n${Array.from({ length: rows }, (_, row) => `C1,${4000 + row}`).join('\n')}\n`),
})

test('stops where it is told to, and nothing of the file is stored', async () => {
  const { handlers } = made
  const running = handlers['imports.run']({ ...large(3000), mapping, by: 'Ada' })
  const stopped = expect(running).rejects.toMatchObject({ code: 'cancelled' })
  await handlers['task.cancel']({ task: 'import' })
  await stopped
  expect(await handlers['imports.list']({})).toEqual([])
})

test('tells how far the storing is', async () => {
  const told: number[] = []
  made.engine.subscribe('task.progress', ({ done }) => told.push(done))
  await made.handlers['imports.run']({ ...large(1200), mapping, by: 'Ada' })
  expect(told).toContain(500)
  expect(told.at(-1)).toBe(1200)
})

test('says what was stored where the wish to stop it comes too late', async () => {
  made.engine.subscribe('task.progress', ({ done, total }) => {
    if (done === total) void made.handlers['task.cancel']({ task: 'import' })
  })
  const { summary } = await made.handlers['imports.run']({ ...large(20), mapping, by: 'Ada' })
  expect(summary.new).toBe((await made.handlers['imports.list']({}))[0]!.results)
})

test.each([
  ['a file that is too large', new Uint8Array(30_000_001), 'invalid-input', /30\.0 MB/],
  ['a locked file', fromHex('d0cf11e0a1b11ae1'), 'not-readable', /password/],
  ['a picture', fromHex('ffd8ffe000104a46494600'), 'not-readable', /neither a table of text/],
])('says of %s why it is not read', async (_what, content, code, message) => {
  await expect(made.handlers['imports.look']({ name: 'a.xlsx', content, ...unsaid })).rejects.toMatchObject({
    code,
    message: expect.stringMatching(message),
  })
})
