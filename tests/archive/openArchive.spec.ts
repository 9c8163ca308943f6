import { spawnSync } from 'node:child_process'
import { chmodSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import { migrations } from '#archive/core/migrate.ts'
import { type ArchiveOpening, openArchive } from '#archive/openArchive.ts'
import { breakRecord, breakRow } from '#contract/breaks/break.ts'
import { listQuery } from '#contract/listQuery.ts'
import type { Progress } from '#contract/tasks.ts'
import type { Topic } from '#contract/topics.ts'
import { olderArchive } from './core/olderArchive.ts'
import {
  evaluationOf,
  header,
  morning,
  rampAndFall,
  scale,
  session,
  settings,
  specimenFields,
  temporaryFolder,
} from './storedStudy.ts'

async function open(path: string, change: Partial<ArchiveOpening> = {}): Promise<Archive> {
  const archive = await openArchive({ path, program: 'breakledger test', clockInstant: () => morning, ...change })
  onTestFinished(() => archive.close())
  return archive
}

function newPath(): string {
  return join(temporaryFolder(), 'study.breakledger')
}

const curve = rampAndFall(300, 600_000)

async function storeOne(archive: Archive): Promise<number> {
  const { specimenId } = await archive.addSpecimen(specimenFields('C1-LL-1'), morning, 'bench')
  const { sessionId } = await archive.beginSession(session)
  const { breakId } = await archive.beginBreak(header(sessionId, specimenId))
  await archive.appendSamples(breakId, curve)
  await archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve))
  return breakId
}

test('keeps through closing and opening all that the archive can be told', async () => {
  const path = newPath()
  const first = await open(path)
  const breakId = await storeOne(first)
  await first.addSpecimens([specimenFields('C1-LL-2'), specimenFields('C1-LL-3')], morning, 'bench')
  await first.correctSpecimen(2, specimenFields('C1-LL-2', { place: 'loft' }), morning, 'bench', 'moved')
  await first.keepRejectedLines(1, morning, 4, Uint8Array.of(63))
  await first.addEvaluation({ ...evaluationOf(curve), breakId, method: 'test 2', settings, scale })
  await first.addAssessment({
    breakId,
    recordedAt: morning,
    by: 'bench',
    woodFailurePercent: 75,
    failurePattern: 'SF',
    note: 'clean',
  })
  await first.addDecision({
    breakId,
    recordedAt: morning,
    by: 'bench',
    reason: 'slipped',
    kind: 'set-aside',
    specimenId: null,
  })
  await first.setPreferences({ units: 'US' })
  await first.close()

  const archive = await open(path)
  expect(await archive.info()).toEqual({
    path,
    formatVersion: migrations.length,
    specimens: 3,
    breaks: 1,
    simulated: 1,
    recovered: [],
    demo: true,
    own: false,
  })
  const record = await archive.break(breakId)
  expect(breakRecord.parse(record)).toEqual(record)
  expect(record.evaluations.map((evaluation) => evaluation.method)).toEqual(['test 1', 'test 2'])
  expect(record.summary).toMatchObject({ setAside: 'slipped', woodFailurePercent: 75, note: 'clean' })
  expect((await archive.specimen(2)).revisions).toHaveLength(2)
  expect((await archive.waitingSpecimens(null, 10)).total).toBe(2)
  expect((await archive.listSpecimens(listQuery.parse({ text: 'loft', status: 'waiting' }))).rows).toHaveLength(3)
  const [row] = (await archive.listBreaks(listQuery.parse({}))).rows
  expect(breakRow.parse(row)).toEqual({ ...record.summary, block: row!.block })
  expect(await archive.recoveredWithoutEvaluation()).toEqual([])
  expect((await archive.preferences()).units).toBe('US')
  expect(await archive.readCurve(breakId)).toEqual({
    timeS: curve.timeUs.map((timeUs) => timeUs / 1e6),
    readings: curve.readings,
  })
})

test('leaves the samples it was given with their owner', async () => {
  const archive = await open(newPath())
  const { sessionId } = await archive.beginSession(session)
  const { breakId } = await archive.beginBreak(header(sessionId, null))
  const block = rampAndFall(10, 50)
  await archive.appendSamples(breakId, block)
  expect(block.timeUs).toHaveLength(10)
})

test('rejects with a trouble that names the record, and goes on', async () => {
  const archive = await open(newPath())
  await expect(archive.break(9)).rejects.toMatchObject({
    name: 'Trouble',
    code: 'not-found',
    message: 'There is no break 9 in this archive.',
  })
  await storeOne(archive)
  await expect(archive.addSpecimen(specimenFields('C1-LL-1'), morning, 'bench')).rejects.toMatchObject({
    code: 'conflict',
  })
  expect((await archive.info()).specimens).toBe(1)
})

test('tells what a write touched once, before its promise resolves, and nothing of what failed or only read', async () => {
  const archive = await open(newPath())
  const told: (readonly Topic[])[] = []
  const end = archive.onChange((topics) => told.push(topics))
  await archive.addSpecimens([specimenFields('C1-LL-1'), specimenFields('C1-LL-2')], morning, 'bench')
  expect(told).toEqual([['catalogue', 'specimen 1', 'specimen 2']])
  await expect(
    archive.addSpecimens([specimenFields('C1-LL-3'), specimenFields('C1-LL-1')], morning, 'bench'),
  ).rejects.toMatchObject({ code: 'conflict' })
  await archive.specimen(1)
  expect(told).toHaveLength(1)
  end()
  await archive.setPreferences({ sound: true })
  expect(told).toHaveLength(1)
})

test('verifies while a capture runs, with progress', async () => {
  const archive = await open(newPath())
  const breakId = await storeOne(archive)
  const running = (await archive.beginBreak(header(1, null))).breakId
  const seen: number[] = []
  const verifying = archive.verify((progress) => seen.push(progress.done), new AbortController().signal)
  await archive.appendSamples(running, rampAndFall(10, 50))
  expect(await verifying).toMatchObject({ sound: true, breaks: 2, faults: [] })
  expect(seen.at(-1)).toBe(2)
  expect((await archive.break(breakId)).end?.samples).toBe(300)
})

test('stops verifying when told to, and can verify again', async () => {
  const archive = await open(newPath())
  await storeOne(archive)
  const stop = new AbortController()
  const verifying = archive.verify(() => {}, stop.signal)
  stop.abort()
  await expect(verifying).rejects.toMatchObject({ code: 'cancelled' })
  await expect(archive.verify(() => {}, AbortSignal.abort())).rejects.toMatchObject({ code: 'cancelled' })
  expect((await archive.verify(() => {}, new AbortController().signal)).sound).toBe(true)
})

test('makes its lists again, with progress, and leaves them when it is stopped', async () => {
  const archive = await open(newPath())
  const breakId = await storeOne(archive)
  const before = await archive.break(breakId)
  const told: (readonly Topic[])[] = []
  const seen: number[] = []
  archive.onChange((topics) => told.push(topics))
  await archive.rebuildDerived((progress) => seen.push(progress.done), new AbortController().signal)
  expect(seen.at(-1)).toBe(2)
  expect(told).toEqual([expect.arrayContaining(['breaks', 'specimens'])])
  await expect(archive.rebuildDerived(() => {}, AbortSignal.abort())).rejects.toMatchObject({ code: 'cancelled' })
  expect(told).toHaveLength(1)
  expect(await archive.break(breakId)).toEqual(before)
})

test('tells how far it is when opening makes the lists of an older format again', async () => {
  const path = newPath()
  olderArchive(3, path).close()
  const told: Progress[] = []
  await open(path, { onProgress: (progress) => told.push(progress) })
  expect(told.at(-1)).toEqual({ task: 'rebuild', done: 14, total: 14 })
})

test('lets others read, verify and not write while one writes', async () => {
  const path = newPath()
  const writer = await open(path)
  await expect(open(path)).rejects.toMatchObject({ name: 'Trouble', code: 'archive-in-use' })
  const reader = await open(path, { mode: 'read' })
  const breakId = await storeOne(writer)
  expect((await reader.readCurve(breakId)).readings).toEqual(curve.readings)
  expect((await reader.verify(() => {}, new AbortController().signal)).sound).toBe(true)
  await expect(reader.setPreferences({ sound: true })).rejects.toMatchObject({ code: 'archive-read-only' })
})

test('says what stands in the way of opening', async () => {
  const folder = temporaryFolder()
  await expect(open(join(folder, 'nowhere', 'a.breakledger'))).rejects.toMatchObject({ code: 'archive-missing' })
  const text = join(folder, 'text.breakledger')
  writeFileSync(text, 'no database at all\n'.repeat(100))
  await expect(open(text)).rejects.toMatchObject({ code: 'archive-damaged' })
})

test('rejects calls after closing; closing twice is harmless', async () => {
  const archive = await open(newPath())
  await Promise.all([archive.close(), archive.close()])
  await expect(archive.info()).rejects.toMatchObject({ code: 'conflict', message: 'The archive is closed.' })
})

// Root may write anywhere, so a child of another user tries.
test('says that an archive or its folder is read-only, and can still be asked to read', async () => {
  const path = newPath()
  const archive = await open(path)
  await storeOne(archive)
  await archive.close()
  const asOther = (mode: string) =>
    spawnSync(process.execPath, [join(import.meta.dirname, 'openingChild.ts'), path, mode], {
      encoding: 'utf8',
      ...(process.getuid?.() === 0 ? { uid: 65_534 } : {}),
    }).stdout
  chmodSync(join(path, '..'), 0o755)
  chmodSync(path, 0o444)
  expect(asOther('write')).toBe(`archive-read-only: The archive ${path} cannot be written.`)
  chmodSync(path, 0o666)
  chmodSync(join(path, '..'), 0o555)
  expect(asOther('write')).toBe(`archive-read-only: The archive ${path} cannot be written.`)
  expect(asOther('read')).toBe('1')
  chmodSync(join(path, '..'), 0o755)
})
