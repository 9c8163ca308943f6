import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { readEnd } from '#archive/breaks/breakHeaders.ts'
import { appendSamples, beginBreak, readCurve } from '#archive/breaks/breaks.ts'
import { recoverBreaks } from '#archive/breaks/recovery.ts'
import { verify } from '#archive/verify/verify.ts'
import { archiveInMemory, header, rampAndFall, session } from '../storedStudy.ts'

const curve = rampAndFall(100, 5000)

/** Two captures that a crash cut short. */
function running(): Database.Database {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  for (let capture = 1; capture <= 2; capture++) {
    const { breakId } = beginBreak(database, header(sessionId, null))
    appendSamples(database, breakId, curve)
  }
  return database
}

function plant(database: Database.Database, table: string, change: string): void {
  database.exec(`DROP TRIGGER IF EXISTS ${table}_is_never_changed; UPDATE ${table} SET ${change} WHERE break_id = 1`)
}

test.each([
  ['running_block', 'first_us = first_us + 4096, last_us = last_us + 4096'],
  ['running_block', 'first_mantissa = first_mantissa + 65536'],
  ['running_block', 'first_step = first_step + 1'],
  ['running_block', 'decimals = 3'],
  ['running_block', 'differences = 3 - differences'],
  ['break_header', `scale = '{"kind":"uncalibrated-scale","nPerCount":0.02}'`],
  ['break_header', `tare = '{"offset":4000,"sd":1,"samples":80,"takenAt":"2031-05-02T09:30:00.000Z"}'`],
])('a capture whose %s was damaged (%s) makes no break, and keeps no other from being recovered', (table, change) => {
  const database = running()
  plant(database, table, change)
  expect(recoverBreaks(database)).toEqual([2])
  expect(readEnd(database, 1)).toBeNull()
  expect(readEnd(database, 2)).toMatchObject({ ending: 'recovered', samples: 100 })
  expect(verify(database, () => {}).faults).toContainEqual({
    where: 'break 1',
    what: expect.stringMatching(/^The curve of break 1 is damaged in block 0:/),
  })
})

test('a capture that an older program left, with a checksum of its bytes alone, is recovered', () => {
  const database = running()
  const block = database.prepare<[], { times: Buffer; readings: Buffer }>('SELECT * FROM running_block').get()!
  const bytes = createHash('sha256').update(block.times).update(block.readings).digest('hex')
  plant(database, 'running_block', `sha256 = '${bytes}'`)
  expect(recoverBreaks(database)).toEqual([1, 2])
  expect(readCurve(database, 1).readings).toEqual(curve.readings)
})

test('the checksum can be computed from the file alone, as FORMAT.md says', () => {
  const database = running()
  const [block] = database.prepare<[], Record<string, unknown>>('SELECT * FROM running_block').all()
  const stored = database.prepare<[], Record<string, string>>('SELECT * FROM break_header').get()!
  const { scale, settings } = stored
  const head = `{"breakId":1,"readingUnit":"counts","scale":${scale},"sessionId":1,"settings":${settings},"specimenId":null,"startedAt":"${stored.started_at}","tare":null}`
  const { break_id: _breakId, times, readings, sha256, ...columns } = block!
  const sorted = JSON.stringify(Object.fromEntries(Object.entries(columns).sort(([a], [b]) => (a < b ? -1 : 1))))
  const hash = createHash('sha256').update(`${head}\n${sorted}\n`)
  expect(
    hash
      .update(times as Buffer)
      .update(readings as Buffer)
      .digest('hex'),
  ).toBe(sha256)
})
