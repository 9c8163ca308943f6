import { afterEach, describe, expect, test, vi } from 'vitest'
import * as z from 'zod'
import type { Handlers, InputOf, ProcedureName } from '#contract/procedures.ts'

vi.mock('#contract/keeping/procedures.ts', async (original) => {
  const { question } = await import('#contract/procedure.ts')
  const { keepingProcedures } = await original<typeof import('#contract/keeping/procedures.ts')>()
  const added = question({
    input: z.strictObject({ specimenId: z.int() }),
    output: z.strictObject({ places: z.array(z.string()) }),
    reads: ({ specimenId }) => [`specimen ${specimenId}`],
  })
  return { keepingProcedures: { ...keepingProcedures, 'places.of': added } }
})

const { createClient } = await import('#contract/wire/carrier.ts')
const { topicsRead } = await import('#renderer/host/changes.ts')
const { createScriptedEngine } = await import('#tests/fakes/scripted/scriptedEngine.ts')
const { carriers } = await import('./carriers.ts')

// The compiler does not know what the test adds; in the product it follows from the schema.
const name = 'places.of' as ProcedureName
const input = { specimenId: 3 } as InputOf<ProcedureName>
const script = {
  [name]: async (asked: unknown) => ({ places: ['rack 2', JSON.stringify(asked)] }),
} as Partial<Handlers>

describe('a new procedure takes a schema, a handler and nothing else', () => {
  let close = async () => {}
  afterEach(() => close())

  test.each(Object.entries(carriers))('over %s', async (_name, connect) => {
    const connected = await connect(createScriptedEngine(script))
    close = connected.close
    const client = createClient(connected.carrier, () => {})
    expect(await client.call(name, input)).toEqual({ places: ['rack 2', '{"specimenId":3}'] })
    await expect(client.call(name, { specimenId: 'three' } as never)).rejects.toMatchObject({ code: 'invalid-input' })
  })

  test('and whoever shows its answer knows when to ask again', () => {
    expect(topicsRead(name as 'app.info', input as InputOf<'app.info'>)).toEqual(['specimen 3'])
  })
})
