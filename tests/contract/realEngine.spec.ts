import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import type { Topic } from '#contract/topics.ts'
import { createClient } from '#contract/wire/carrier.ts'
import { createRealEngine } from '#engine/createRealEngine.ts'
import { carriers } from './carriers.ts'

describe.each(Object.entries(carriers))('the real engine over %s', (_name, connect) => {
  test('keeps a specimen, tells that records changed, and gives it back', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'breakledger-contract-'))
    const engine = await createRealEngine({
      archivePath: join(folder, 'contract.breakledger'),
      host: { host: 'direct', capabilities: [] },
      program: 'Breakledger test',
    })
    const connected = await connect(engine)
    onTestFinished(async () => {
      await connected.close()
      await engine.close()
      await engine.archive.close()
      rmSync(folder, { recursive: true, force: true })
    })
    const client = createClient(connected.carrier, () => expect.unreachable('an event did not parse'))
    const changed = new Promise<readonly Topic[]>((resolve) =>
      client.on('records.changed', ({ topics }) => resolve(topics)),
    )

    const fields = { number: 'C1-LL-03', adhesive: 'hide glue', areaMm2: 625 }
    const added = await client.call('specimens.add', { fields, by: 'the test' })
    expect(await changed).toEqual(['catalogue', `specimen ${added.specimenId}`])
    const { total, rows } = await client.call('specimens.list', { text: 'HIDE c1-ll' })
    expect([total, rows[0]?.fields.number, rows[0]?.fields.areaMm2]).toEqual([1, 'C1-LL-03', 625])

    const again = await client.call('specimens.add', { fields, by: 'the test' }).catch((thrown: unknown) => thrown)
    expect(again).toMatchObject({ code: 'conflict', hint: expect.stringMatching(/\S/) })
    expect(await client.call('archive.verify', {})).toMatchObject({ sound: true, faults: [] })
  })
})
