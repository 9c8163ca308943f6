import { describe, expect, it } from 'vitest'
import { programFault } from '#contract/errors.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

const asked: unknown[] = []
const { handlers } = createScriptedEngine({
  'ports.list': async () => [],
  'breaks.get': async () => ({ wrong: true }) as never,
  'bench.disconnect': async () => ({ wrong: true }) as never,
  'breaks.list': async (input) => {
    asked.push(input)
    return { total: 0, rows: [] }
  },
})
const dispatch = createDispatcher(handlers)

describe('a call by name', () => {
  it('is answered with what the handler says', async () => {
    expect(await dispatch('ports.list', {})).toEqual({ ok: true, value: [] })
  })
  it('hands the handler the input as the contract completes it, and one that does not fit to nobody', async () => {
    await dispatch('breaks.list', {})
    expect(asked).toEqual([expect.objectContaining({ text: '' })])
    expect(await dispatch('breaks.list', { text: 7 })).toMatchObject({ ok: false, error: { code: 'invalid-input' } })
    expect(asked).toHaveLength(1)
  })
  it.each(['breaks.steal', '__proto__', 'constructor', 7, null, undefined])('refuses the name %s', async (name) => {
    expect(await dispatch(name, {})).toMatchObject({ ok: false, error: { code: 'unknown-procedure' } })
  })
  it('says no more than a hundred letters of an unknown name back', async () => {
    const answer = await dispatch('x'.repeat(5000), {})
    expect(answer.ok ? '' : answer.error.message).toContain(`"${'x'.repeat(100)}"`)
  })
  it('tells an answer that does not fit from a deed that was not done', async () => {
    const question = await dispatch('breaks.get', { breakId: 1 })
    const deed = await dispatch('bench.disconnect', {})
    expect(question).toMatchObject({ ok: false, error: { code: 'internal', hint: programFault } })
    expect(deed).toMatchObject({ ok: false, error: { code: 'internal' } })
    expect(deed.ok ? '' : deed.error.hint).toContain('was done')
  })
})
