import { beforeEach, expect, test } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import type { Client } from '#contract/wire/carrier.ts'
import { createChanges } from '#renderer/host/changes.ts'
import { keepAnswer } from '#renderer/host/keptAnswer.ts'

/** Calls that wait until the test answers them. */
let asked: { name: string; answer(value: unknown): void; fail(error: unknown): void }[]
let shown: string[]
let changes: ReturnType<typeof createChanges>
beforeEach(() => {
  asked = []
  shown = []
  changes = createChanges()
})

const client = {
  call: (name: string) => new Promise((resolve, reject) => asked.push({ name, answer: resolve, fail: reject })),
} as unknown as Client
const keep = (breakId = 1) =>
  keepAnswer(
    { client, changes },
    'breaks.get',
    { breakId },
    {
      asking: () => shown.push('asking'),
      answered: (value) => shown.push(`answer ${value}`),
      failed: ({ message }) => shown.push(message),
    },
  )
const turn = () => new Promise((resolve) => setImmediate(resolve))

test('asks at once, and again once for each change of what was read', async () => {
  keep()
  asked[0]!.answer(1)
  await turn()
  changes.tell(['specimen 1', 'break 1', 'result 1'])
  changes.tell(['break 2'])
  expect(asked).toHaveLength(2)
  asked[1]!.answer(2)
  await turn()
  expect(shown).toEqual(['asking', 'answer 1', 'asking', 'answer 2'])
})

test('asks once more when changes come before the answer, so that the newest comes last', async () => {
  keep()
  changes.tell(['break 1'])
  changes.tell(['break 1'])
  expect(asked).toHaveLength(1)
  asked[0]!.answer('before')
  await turn()
  expect(asked).toHaveLength(2)
  asked[1]!.answer('after')
  await turn()
  expect(shown).toEqual(['asking', 'answer before', 'asking', 'answer after'])
})

test('lets nobody hear an answer that comes after it was ended', async () => {
  const end = keep()
  changes.tell(['break 1'])
  end()
  keep(2)
  asked[1]!.answer('newer')
  await turn()
  asked[0]!.answer('older')
  await turn()
  expect(shown).toEqual(['asking', 'asking', 'answer newer'])
  changes.tell(['break 1'])
  expect(asked).toHaveLength(2)
})

test('tells a trouble and asks again when the host is back', async () => {
  keep()
  asked[0]!.fail(new Trouble('not-connected', 'The page is not connected.', 'Wait.'))
  await turn()
  changes.tell('everything')
  asked[1]!.answer('there')
  await turn()
  expect(shown).toEqual(['asking', 'The page is not connected.', 'asking', 'answer there'])
})
