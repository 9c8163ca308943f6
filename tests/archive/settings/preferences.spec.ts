import { expect, test } from 'vitest'
import { preferences, setPreferences } from '#archive/settings/preferences.ts'
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
  database.exec(`INSERT INTO preference VALUES ('theme', '"sepia"'), ('smell', '1')`)
  expect(preferences(database)).toEqual({ ...defaultPreferences, sound: true })
})
