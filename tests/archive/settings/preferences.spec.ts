import { expect, test } from 'vitest'
import { arePreferencesSound, preferences, setPreferences } from '#archive/settings/preferences.ts'
import { verify } from '#archive/verify/verify.ts'
import { defaultPreferences } from '#contract/settings/settings.ts'
import { archiveInMemory } from '../storedStudy.ts'

test('begins with the defaults', () => {
  expect(preferences(archiveInMemory())).toEqual(defaultPreferences)
})

test('changes what is given and leaves the rest', () => {
  const database = archiveInMemory()
  setPreferences(database, { units: 'US', capacityN: 5000 })
  expect(setPreferences(database, { capacityN: null })).toEqual({ ...defaultPreferences, units: 'US' })
  expect(preferences(database)).toEqual({ ...defaultPreferences, units: 'US' })
})

test('refuses a value that the contract does not know, and keeps what was', () => {
  const database = archiveInMemory()
  expect(() => setPreferences(database, { capacityN: -1 })).toThrow()
  expect(preferences(database)).toEqual(defaultPreferences)
})

test('takes a stored value that this version cannot read as never set', () => {
  const database = archiveInMemory()
  setPreferences(database, { sound: true })
  database.exec(`DELETE FROM preference WHERE name = 'checksum'`)
  database.exec(`INSERT INTO preference VALUES ('theme', '"sepia"'), ('smell', '1')`)
  expect(preferences(database)).toEqual({ ...defaultPreferences, sound: true })
})

test('uses no scale, rated load or threshold that was changed behind its back, and says so until they are set again', () => {
  const database = archiveInMemory()
  setPreferences(database, { nPerCount: 0.01, capacityN: 5000, units: 'US' })
  expect(verify(database, () => {}).faults).toEqual([])
  // One bit of a digit
  database.exec(`UPDATE preference SET value = '0.03' WHERE name = 'nPerCount'`)
  expect(arePreferencesSound(database)).toBe(false)
  expect(preferences(database)).toEqual({ ...defaultPreferences, units: 'US' })
  expect(verify(database, () => {}).faults).toMatchObject([{ where: 'settings' }])
  expect(setPreferences(database, { capacityN: 6000 })).toMatchObject({ capacityN: 6000, nPerCount: null, units: 'US' })
  expect(arePreferencesSound(database)).toBe(true)
  expect(preferences(database)).toEqual({ ...defaultPreferences, units: 'US', capacityN: 6000 })
})

test('reads what an older program kept without a checksum, and what is no JSON as never set', () => {
  const database = archiveInMemory()
  database.pragma('ignore_check_constraints = ON')
  database.exec(`INSERT INTO preference VALUES ('nPerCount', '0.02'), ('units', '"US')`)
  expect(preferences(database)).toEqual({ ...defaultPreferences, nPerCount: 0.02 })
  expect(arePreferencesSound(database)).toBe(true)
})
