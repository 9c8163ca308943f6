import { beforeEach, expect, test } from 'vitest'
import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { Topic } from '#contract/topics.ts'
import { deedsCatchUp, watchRecords } from '#engine/core/recordsWatch.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

let told: unknown[]
let write: (topics: Topic[]) => void
let ended: boolean
beforeEach(() => {
  told = []
  ended = false
})
const archive = {
  onChange(listener: (topics: readonly Topic[]) => void) {
    write = listener
    return () => {
      ended = true
    }
  },
}
const emit: Emit = (name, payload) => void told.push([name, payload])

test('tells each write once, after the engine has caught up with it', async () => {
  const { caughtUp } = watchRecords(archive, emit, async (topics) => void told.push(`caught up with ${topics}`))
  write(['break 1', 'specimen 4'])
  write(['weights'])
  await caughtUp()
  expect(told).toEqual([
    'caught up with break 1,specimen 4',
    ['records.changed', { topics: ['break 1', 'specimen 4'] }],
    'caught up with weights',
    ['records.changed', { topics: ['weights'] }],
  ])
})

test('tells a trouble on the way, and the write all the same', async () => {
  const trouble = new Trouble('archive-damaged', 'It cannot be read.', 'Verify it.')
  const { caughtUp } = watchRecords(archive, emit, () => Promise.reject(trouble))
  write(['breaks'])
  await caughtUp()
  expect(told).toEqual([
    ['trouble', { code: 'archive-damaged', message: 'It cannot be read.', hint: 'Verify it.' }],
    ['records.changed', { topics: ['breaks'] }],
  ])
})

test('hears nothing more once it has ended', () => {
  watchRecords(archive, emit, async () => {}).end()
  expect(ended).toBe(true)
})

test('lets a deed be done when what it wrote is told, and keeps no question waiting', async () => {
  const caught = Promise.withResolvers<void>()
  const { handlers } = createScriptedEngine({
    'weights.list': async () => ({ weights: [], savedAt: null, by: '' }),
    'weights.save': async () => ({ weights: [], savedAt: null, by: '' }),
  })
  const waiting = deedsCatchUp(handlers, { caughtUp: () => caught.promise })
  await waiting['weights.list']({})
  const saved = waiting['weights.save']({ weights: [], by: '' }).then(() => told.push('saved'))
  await waiting['weights.list']({})
  expect(told).toEqual([])
  caught.resolve()
  await saved
  expect(told).toEqual(['saved'])
})
