import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { derivationVersion, isDerivedHere } from '#archive/lists/derivation.ts'
import { openHere } from '#archive/openHere.ts'
import { verify } from '#archive/verify/verify.ts'
import type { Progress } from '#contract/tasks.ts'
import { olderArchive } from './core/olderArchive.ts'
import { morning, storeBreak, temporaryFolder } from './storedStudy.ts'

function open(path: string, mode: 'read' | 'write' = 'write') {
  const told: Progress[] = []
  const opened = openHere({ path, mode, program: 'test', instant: morning }, (progress) => told.push(progress))
  onTestFinished(() => opened.close())
  return { ...opened, told }
}

const newPath = () => join(temporaryFolder(), 'study.breakledger')

test('makes the lists of an older format again when it is opened for writing, with progress, once', () => {
  const path = newPath()
  olderArchive(3, path).close()
  const first = open(path)
  expect(first.told.at(-1)).toMatchObject({ done: 14, total: 14 })
  expect(verify(first.database, () => {}).faults).toEqual([])
  first.close()
  expect(open(path).told).toEqual([])
})

test('makes the lists of another derivation again when it is opened for writing, and leaves them when it only reads', () => {
  const path = newPath()
  const first = open(path)
  storeBreak(first.database, null)
  first.database.exec(`UPDATE break_current SET peak_n = 1; UPDATE derivation SET version = ${derivationVersion + 1}`)
  first.close()
  const reading = open(path, 'read')
  expect(isDerivedHere(reading.database)).toBe(false)
  expect(verify(reading.database, () => {}).faults).toEqual([])
  reading.close()
  const { database } = open(path)
  expect(isDerivedHere(database)).toBe(true)
  expect(database.prepare('SELECT peak_n FROM break_current').pluck().get()).toBe(6000)
})
