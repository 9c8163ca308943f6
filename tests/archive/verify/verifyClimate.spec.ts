import { expect, test } from 'vitest'
import { storeReadings } from '#archive/findings/climate/storeReadings.ts'
import { verify } from '#archive/verify/verify.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
import { hoursFrom, madeReadings } from '../findings/climate/madeReadings.ts'
import { archiveInMemory } from '../storedStudy.ts'

function stored() {
  const database = archiveInMemory()
  storeReadings(
    database,
    () => {},
    () => false,
    madeReadings(hoursFrom(0, 300)),
  )
  return database
}

test('finds readings sound that are as they came', () => {
  expect(verify(stored(), () => {}).faults).toEqual([])
})

test.each([
  [
    'a changed byte',
    `UPDATE climate_block SET readings = CAST(substr(readings, 1, 9) || x'5A' || substr(readings, 11) AS BLOB)
     WHERE quantity = 'temperature'`,
    'The temperature of climate import 1 is damaged in block 0: it does not match its SHA-256.',
  ],
  [
    'a lost block',
    `DELETE FROM climate_block WHERE quantity = 'humidity'`,
    'it has 0 readings of the humidity, recorded are 240',
  ],
  [
    'another first value',
    `UPDATE climate_block SET first_mantissa = first_mantissa + 1 WHERE quantity = 'humidity'`,
    'its humidity does not match the recorded SHA-256',
  ],
])('names the import with %s', (_what, text, what) => {
  const database = stored()
  behindTheTriggers(database, text)
  expect(verify(database, () => {}).faults).toContainEqual({ where: 'climate import 1', what })
})
