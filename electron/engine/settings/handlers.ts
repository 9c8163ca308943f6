import type { HandlersOf } from '#contract/procedures.ts'
import type { settingsProcedures } from '#contract/settings/procedures.ts'
import type { KeptPreferences } from './preferences.ts'

/** What the program remembers for its user. */
export function settingsHandlers(preferences: KeptPreferences): HandlersOf<typeof settingsProcedures> {
  return { 'preferences.set': (change) => preferences.change(change) }
}
