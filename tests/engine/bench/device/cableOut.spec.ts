import { afterEach, beforeEach, expect, test } from 'vitest'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

test('ends the capture that runs as interrupted, tells of it, and keeps zero and specimen for when it is back', async () => {
  const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const events: string[] = []
  // Six seconds of loading begin four to six seconds after the zero: the cable comes out in the middle of them.
  const unplugs = [{ atS: 10, forS: 3 }]
  const { engine, until, heardOf, handlers } = await benchEngine(
    home.archive,
    { unplugs },
    { log: ({ event }) => events.push(event) },
  )
  await handlers['bench.connect']({ source: virtualChoice })
  const { tare } = await until(({ captureBreakId }) => captureBreakId !== null)
  const out = await until(({ connection }) => connection.status === 'lost')
  expect(out).toMatchObject({
    phase: 'no-signal',
    connection: { problem: { code: 'port-lost' } },
    specimen: { specimenId: first },
  })
  expect(heardOf('trouble').map(({ code }) => code)).toEqual(['port-lost'])
  await until(({ connection }) => connection.status === 'open')
  await engine.bench.written()
  const { summary, end } = await home.archive.break(1)
  expect(summary).toMatchObject({ ending: 'interrupted', specimenId: first, flags: ['uncalibrated', 'interrupted'] })
  expect(end!.samples).toBeGreaterThan(80)
  expect(engine.bench.state()).toMatchObject({ tare, connection: { problem: null } })
  expect(events.filter((event) => event.endsWith('connected'))).toEqual(['connected', 'disconnected', 'reconnected'])
  await engine.close()
})
