import { afterEach, beforeEach, expect, test } from 'vitest'
import { detectionSettings } from '#contract/breaks/detection.ts'
import { evaluationResult } from '#contract/breaks/evaluation.ts'
import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import { createCaptureRecorder } from '#engine/bench/capture/captureRecorder.ts'
import { createSpecimenQueue, type SpecimenQueue } from '#engine/bench/capture/specimenQueue.ts'
import { createOutbox } from '#engine/core/outbox.ts'
import { movedClock } from '#tests/fakes/movedClock.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { evaluationOf, rampAndFall, scale, session } from '../../../archive/storedStudy.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

const unreadable = new Trouble('archive-damaged', 'A page of the archive cannot be read.', 'Check the archive.')
const curve = rampAndFall(10, 100)
const result = evaluationResult.parse({ ...evaluationOf(curve).result, outcome: 'break' })

/** Captures one break with a queue that may fail, and says what was stored and told. */
async function captured(change: (queue: SpecimenQueue) => Partial<SpecimenQueue>) {
  const clock = movedClock()
  const told: TroubleMessage[] = []
  const queue = createSpecimenQueue(home.archive, { enabled: true, invented: true }, () => {})
  await queue.refresh()
  const outbox = createOutbox({ clock, onProblem() {} })
  const { sessionId } = await home.archive.beginSession(session)
  const recorder = createCaptureRecorder({
    ...{ archive: home.archive, clock, outbox, queue: { ...queue, ...change(queue) } },
    emit: (name, payload) => void (name === 'trouble' && told.push(payload as TroubleMessage)),
    log() {},
    sessionId: () => sessionId,
    onStored() {},
  })
  const startedAt = clock.instant()
  recorder.begin(
    { startedAt, streamTimeS: 0, readingUnit: 'counts', settings: detectionSettings.parse({}) },
    scale,
    null,
    null,
  )
  recorder.samples(curve)
  recorder.end(result, 'complete')
  await outbox.drained()
  return { told, summary: (await home.archive.break(1)).summary }
}

test('gives the break to the specimen in the press', async () => {
  const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const { told, summary } = await captured(() => ({}))
  expect(summary).toMatchObject({ specimenId: first, ending: 'complete' })
  expect(told).toEqual([])
})

test('captures when the next specimen cannot be read, for the one at hand, and says both', async () => {
  const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const { told, summary } = await captured(() => ({ forCapture: () => Promise.reject(unreadable) }))
  expect(summary).toMatchObject({ specimenId: first, ending: 'complete' })
  expect(told).toEqual([
    {
      code: 'archive-damaged',
      message: 'A page of the archive cannot be read. The break that is being recorded is kept for specimen A-1.',
      hint: expect.stringContaining('another specimen'),
    },
  ])
})

test('says that the break is kept without a specimen when none is at hand', async () => {
  const { told, summary } = await captured(() => ({ forCapture: () => Promise.reject(unreadable) }))
  expect(summary.specimenId).toBeNull()
  expect(told[0]!.message).toContain('kept without a specimen')
})
