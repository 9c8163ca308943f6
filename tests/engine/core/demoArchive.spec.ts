import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { benchEngine, serialChoice, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(async () => home.remove())

const ownBlock = specimenFields.parse({ number: 'A-1', adhesive: 'casein C1', areaMm2: 600 })

describe('an archive of a person’s own', () => {
  test('takes neither a virtual bench nor the demo study, whoever asks, and nothing is written', async () => {
    const { engine } = await benchEngine(home.archive, {}, { demo: false })
    const ask = createDispatcher(engine.handlers)
    for (const answer of [await ask('bench.connect', { source: virtualChoice }), await ask('demo.fill', {})])
      expect(answer).toMatchObject({ ok: false, error: { code: 'denied', hint: expect.stringContaining('--demo') } })
    expect(engine.bench.state().connection.status).toBe('closed')
    expect(await home.archive.info()).toMatchObject({ specimens: 0, breaks: 0, demo: false })
    expect(await ask('app.info', {})).toMatchObject({ value: { demo: false } })
    await engine.close()
  })

  test('is known by its specimens even where it is opened for the demo', async () => {
    await home.archive.addSpecimens([ownBlock], '2031-04-06T08:00:00.000Z', 'bench')
    const { engine, handlers } = await benchEngine(home.archive)
    await expect(handlers['bench.connect']({ source: virtualChoice })).rejects.toMatchObject({ code: 'denied' })
    const told: unknown[] = []
    engine.subscribe('records.changed', (payload) => told.push(payload))
    await expect(handlers['demo.fill']({})).rejects.toMatchObject({ code: 'denied' })
    // Whoever asked meanwhile heard that it is being filled
    expect(told).toContainEqual({ topics: ['studies'] })
    await engine.close()
  })
})

test('what is entered while the demo is open is marked as simulated, so that it stays a demo', async () => {
  const { engine, handlers } = await benchEngine(home.archive)
  const { specimenId, fields } = await handlers['specimens.add']({ fields: ownBlock, by: 'bench' })
  expect(fields.demo).toBe(true)
  const corrected = { ...ownBlock, areaMm2: 620 }
  await handlers['specimens.correct']({ specimenId, fields: corrected, by: 'bench', reason: 'measured again' })
  expect((await handlers['specimens.get']({ specimenId })).current.fields).toMatchObject({ areaMm2: 620, demo: true })
  await handlers['bench.connect']({ source: virtualChoice })
  await engine.close()
})

test('the demo takes no break of a real device', async () => {
  const { engine, handlers } = await benchEngine(home.archive)
  await expect(handlers['bench.connect']({ source: serialChoice })).rejects.toMatchObject({
    code: 'denied',
    hint: expect.stringContaining('own archive'),
  })
  expect(engine.bench.state().connection.status).toBe('closed')
  await engine.close()
})
