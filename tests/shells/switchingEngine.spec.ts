import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { demoSource } from '#contract/bench/source.ts'
import { listQuery } from '#contract/listQuery.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { createSwitchingEngine } from '#shells/switchingEngine.ts'

test('opens the demo in place of a person’s own archive, which nothing invented enters, and goes back to it', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-switch-'))
  const ownPath = join(folder, 'archive.breakledger')
  const demoPath = join(folder, 'demo.breakledger')
  const places = { own: ownPath, demo: demoPath }
  const options = { places, openedFile: join(folder, 'opened.json'), host: 'loopback', program: 'test' } as const
  const engine = await createSwitchingEngine({ ...options, archivePath: ownPath, demo: false })
  onTestFinished(async () => {
    await engine.close()
    await rm(folder, { recursive: true, force: true })
  })
  const { handlers } = engine
  const fields = specimenFields.parse({ number: 'A-1', adhesive: 'casein C1', areaMm2: 600 })
  await handlers['specimens.add']({ fields, by: 'bench' })
  expect(await handlers['app.info']({})).toMatchObject({ demo: false, capabilities: ['switch-archive'] })
  await expect(handlers['bench.connect']({ source: demoSource })).rejects.toMatchObject({ code: 'denied' })

  const statuses: string[] = []
  engine.subscribe('bench.state', ({ connection }) => statuses.push(connection.status))
  await handlers['archive.switch']({ to: { kind: 'demo' } })
  const { demo, archive } = await handlers['app.info']({})
  expect({ demo, path: archive.path }).toEqual({ demo: true, path: demoPath })
  expect(archive.specimens).toBeGreaterThan(1000)
  const { connection, specimen, waitingSpecimens } = await handlers['bench.state']({})
  expect(connection).toMatchObject({ status: 'open', source: { kind: 'virtual' } })
  // The block at hand is the first that waits for the press, whatever was broken while the demo was filled
  const { rows } = await handlers['specimens.list'](listQuery.parse({ status: 'waiting' }))
  const first = rows.find(({ timesBroken }) => timesBroken === 0)!
  expect(specimen).toMatchObject({ specimenId: first.specimenId, timesBroken: 0, withdrawn: null })
  expect(waitingSpecimens).toBeGreaterThan(0)
  await expect.poll(() => statuses).toContain('open')
  const own = await openArchive({ path: ownPath, program: 'test', mode: 'read' })
  expect(await own.info()).toMatchObject({ specimens: 1, breaks: 0, demo: false, own: true })
  await own.close()

  await handlers['archive.switch']({ to: { kind: 'own' } })
  expect(await handlers['app.info']({})).toMatchObject({ demo: false, archive: { path: ownPath, specimens: 1 } })
  expect((await handlers['bench.state']({})).connection.status).toBe('closed')

  const loft = join(folder, 'loft')
  await expect(handlers['archive.switch']({ to: { kind: 'file', path: loft, make: false } })).rejects.toMatchObject({
    code: 'not-found',
  })
  expect(await handlers['app.info']({})).toMatchObject({ archive: { path: ownPath } })
  // Other tabs hear of it, but not of what failed, and not before the other archive is the one that is asked
  const heard: string[] = []
  engine.subscribe('archive.switched', () => heard.push(engine.path()))
  await expect(handlers['archive.switch']({ to: { kind: 'file', path: loft, make: false } })).rejects.toThrow()
  await handlers['archive.switch']({ to: { kind: 'file', path: loft, make: true } })
  expect(heard).toEqual([`${loft}.breakledger`])
  expect(engine.path()).toBe(`${loft}.breakledger`)
  expect(await handlers['app.info']({})).toMatchObject({ demo: false, archive: { specimens: 0 } })
  const known = await handlers['archive.known']({})
  expect(known.map(({ path, kind, isOpen }) => [path, kind, isOpen])).toEqual([
    [`${loft}.breakledger`, 'own', true],
    [ownPath, 'own', false],
    [demoPath, 'demo', false],
  ])
  await handlers['archive.switch']({ to: { kind: 'file', path: ownPath, make: false } })
  expect(await handlers['app.info']({})).toMatchObject({ archive: { specimens: 1 } })
})

test('leaves the archive that is open as it is when the other cannot be had', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-switch-'))
  const places = { own: join(folder, 'archive.breakledger'), demo: join(folder, 'demo.breakledger') }
  const options = { places, openedFile: join(folder, 'opened.json'), host: 'loopback', program: 'test' } as const
  const engine = await createSwitchingEngine({ ...options, archivePath: places.own, demo: false })
  onTestFinished(async () => {
    await engine.close()
    await rm(folder, { recursive: true, force: true })
  })
  const text = join(folder, 'letter.txt')
  await writeFile(text, 'no archive')
  await expect(engine.switchTo({ kind: 'file', path: text, make: false })).rejects.toMatchObject({
    code: 'archive-damaged',
  })
  expect(engine.path()).toBe(places.own)
  const fields = specimenFields.parse({ number: 'A-1', adhesive: 'casein C1', areaMm2: 600 })
  await engine.handlers['specimens.add']({ fields, by: 'bench' })
  expect(await engine.handlers['app.info']({})).toMatchObject({ archive: { path: places.own, specimens: 1 } })
  await expect(engine.handlers['archive.choose']({ purpose: 'open' })).rejects.toMatchObject({ code: 'unsupported' })
})
