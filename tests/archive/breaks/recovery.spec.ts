import { join } from 'node:path'
import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { readEnd } from '#archive/breaks/breakHeaders.ts'
import { appendSamples, beginBreak, readCurve } from '#archive/breaks/breaks.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { recoverBreaks, recoveredWithoutEvaluation } from '#archive/breaks/recovery.ts'
import { verify } from '#archive/verify/verify.ts'
import { captureAndKill, faultsAfterKill } from '#tests/soak/killedCapture.ts'
import {
  archiveInMemory,
  evaluationOf,
  header,
  rampAndFall,
  session,
  storeBreak,
  temporaryFolder,
} from '../storedStudy.ts'

test('seals what had reached the disk of a break that was cut short, and nothing else', () => {
  const database = archiveInMemory()
  const finished = storeBreak(database, null)
  const end = readEnd(database, finished)
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  const curve = rampAndFall(200, 500)
  appendSamples(database, breakId, curve)

  expect(recoverBreaks(database)).toEqual([breakId])
  // The last sample lies 199 ms after the first.
  expect(readEnd(database, breakId)).toMatchObject({
    ending: 'recovered',
    endedAt: '2031-05-02T09:30:00.199Z',
    samples: 200,
  })
  expect(readCurve(database, breakId).readings).toEqual(curve.readings)
  expect(readEnd(database, finished)).toEqual(end)
  expect(verify(database, () => {}).faults).toEqual([])
  expect(recoverBreaks(database)).toEqual([])
})

test('recovers a break that had no sample yet', () => {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  expect(recoverBreaks(database)).toEqual([breakId])
  expect(readEnd(database, breakId)).toMatchObject({ samples: 0, ending: 'recovered' })
})

test('names recovered breaks until they are evaluated', () => {
  const database = archiveInMemory()
  storeBreak(database, null)
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  const curve = rampAndFall(200, 500)
  appendSamples(database, breakId, curve)
  recoverBreaks(database)
  expect(recoveredWithoutEvaluation(database)).toEqual([breakId])
  addEvaluation(database, { ...evaluationOf(curve, { flags: ['recovered'] }), breakId })
  expect(recoveredWithoutEvaluation(database)).toEqual([])
})

// `npm run soak -- archiveCrash 1000` does the same more often.
test('holds every acknowledged sample after five kills at random moments', async () => {
  const path = join(temporaryFolder(), 'killed.breakledger')
  for (let kill = 0; kill < 5; kill++) {
    const acknowledged = await captureAndKill(path, Math.random() * 300)
    expect(acknowledged.size).toBeGreaterThan(0)
    expect(await faultsAfterKill(path, acknowledged)).toEqual([])
  }
})
