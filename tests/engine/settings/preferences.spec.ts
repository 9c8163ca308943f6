import { expect, test } from 'vitest'
import { defaultPreferences, type Preferences } from '#contract/settings/settings.ts'
import { keepPreferences } from '#engine/settings/preferences.ts'

function keeping() {
  const stored: Partial<Preferences>[] = []
  const told: Preferences[] = []
  const archive = {
    preferences: async () => defaultPreferences,
    setPreferences: async (change: Partial<Preferences>) => {
      stored.push(change)
      return { ...defaultPreferences, ...change }
    },
  }
  return { stored, told, kept: keepPreferences(archive, (preferences) => told.push(preferences)) }
}

test('stores what is given, leaves out what is not, and tells the new version once', async () => {
  const { stored, told, kept } = keeping()
  const preferences = await kept
  expect(preferences.now()).toEqual(defaultPreferences)
  const changed = await preferences.change({ units: 'US', capacityN: undefined })
  expect(stored).toEqual([{ units: 'US' }])
  expect(told).toEqual([changed])
  expect(preferences.now()).toEqual({ ...defaultPreferences, units: 'US' })
})

test('refuses a scale that makes every force 0, and stores nothing', async () => {
  const { stored, kept } = keeping()
  await expect((await kept).change({ nPerCount: 0 })).rejects.toMatchObject({ code: 'invalid-input' })
  expect(stored).toEqual([])
})
