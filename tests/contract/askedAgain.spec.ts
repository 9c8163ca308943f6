import { setImmediate } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { InputOf, QuestionName } from '#contract/procedures.ts'
import { type Host, joinHost } from '#renderer/host/hostConnection.ts'
import { keepAnswer } from '#renderer/host/keptAnswer.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { type CountedEngine, countedEngine } from '#tests/fakes/countedEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { keepCurve } from '../engine/storedCurves.ts'
import { carriers } from './carriers.ts'

/** One real engine on a real archive, and beside each other what three open pages ask: a list, a record and a comparison. */
let home: Awaited<ReturnType<typeof temporaryArchive>>
let made: Awaited<ReturnType<typeof benchEngine>>
let engine: CountedEngine
let host: Host
let close = async () => {}

beforeEach(async () => {
  home = await temporaryArchive()
  const specimenIds = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3', 'A-4'])
  const plain = { restMs: 500, climbMs: 2000, afterMs: 300, peakCounts: 400_000 }
  for (const specimenId of specimenIds.slice(0, 3)) await keepCurve(home.archive, plain, { specimenId })
  made = await benchEngine(home.archive, { breaks: 1 })
  engine = countedEngine(made.engine)
  const connected = await carriers['a direct call']!(engine)
  host = joinHost(connected.carrier, (watcher) => watcher('connected'))
  close = async () => {
    await connected.close()
    await made.engine.close()
    await home.remove()
  }
  keep('breaks.list', {})
  keep('specimens.list', {})
  keep('breaks.get', { breakId: 1 })
  keep('specimens.get', { specimenId: 1 })
  keep('breaks.curve', { breakId: 1 })
  keep('comparison.make', { breakIds: [1, 2], alignAt: 'peak', normalising: 'no' })
  keep('breaks.group', { breakId: 1 })
  keep('calibrations.list', {})
  await settled()
  engine.counts()
})
afterEach(() => close())

function keep<N extends QuestionName>(name: N, input: InputOf<N>): void {
  keepAnswer(host, name, input, { asking() {}, answered() {}, failed: ({ message }) => expect.unreachable(message) })
}

/** Until every question is answered. */
async function settled(): Promise<void> {
  do await setImmediate()
  while (engine.waiting() > 0)
}

const faces = { woodFailurePercent: 65, failurePattern: null, note: 'a thin spot', by: 'bench' } as const
const signature = { by: 'bench', reason: 'seen on the face' }

test('a capture asks the lists twice: once when it begins, once when its break is stored', async () => {
  await made.handlers['bench.connect']({ source: virtualChoice })
  await made.until((state) => state.lastBreak !== null)
  await settled()
  // The group of break 1 may have one more; nothing of break 1 or of the comparison was written.
  expect(engine.counts()).toEqual({ 'breaks.list': 2, 'specimens.list': 2, 'breaks.group': 1 })
})

test('an assessment asks the lists and the open record once, and neither its curve nor a comparison', async () => {
  await made.handlers['breaks.assess']({ breakId: 1, ...faces })
  await settled()
  expect(engine.counts()).toEqual({ 'breaks.list': 1, 'specimens.list': 1, 'breaks.get': 1, 'specimens.get': 1 })
})

test('a note on another break asks the lists alone', async () => {
  await made.handlers['breaks.assess']({ breakId: 3, ...faces })
  await settled()
  expect(engine.counts()).toEqual({ 'breaks.list': 1, 'specimens.list': 1 })
})

test('a corrected peak asks everything that shows it once, but no curve', async () => {
  await made.handlers['breaks.pickPeak']({ breakId: 1, timeS: 1.2, ...signature })
  await settled()
  expect(engine.counts()).toEqual({
    'breaks.list': 1,
    'specimens.list': 1,
    'breaks.get': 1,
    'specimens.get': 1,
    'comparison.make': 1,
    'breaks.group': 1,
  })
})

test('a corrected specimen without breaks asks for specimens alone', async () => {
  const { fields } = (await home.archive.specimen(4)).current
  await made.handlers['specimens.correct']({ specimenId: 4, fields: { ...fields, lot: '7' }, ...signature })
  await settled()
  expect(engine.counts()).toEqual({ 'specimens.list': 1 })
})

test('coming back asks everything once', async () => {
  host.changes.tell('everything')
  await settled()
  expect(engine.counts()).toEqual({
    'breaks.list': 1,
    'specimens.list': 1,
    'breaks.get': 1,
    'specimens.get': 1,
    'breaks.curve': 1,
    'comparison.make': 1,
    'breaks.group': 1,
    'calibrations.list': 1,
  })
})
