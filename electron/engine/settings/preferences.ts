import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import type { ParsedInputOf } from '#contract/procedures.ts'
import type { Preferences } from '#contract/settings/settings.ts'

/** What the program remembers for its user, at hand without asking the archive. */
export type KeptPreferences = {
  now(): Preferences
  /** Fields that are left out, or undefined, stay as they are. Rejects with Trouble `invalid-input` for a scale of 0. */
  change(change: ParsedInputOf<'preferences.set'>): Promise<Preferences>
}

/** Reads them; `changed` is called with each new version once it is stored. */
export async function keepPreferences(
  archive: Pick<Archive, 'preferences' | 'setPreferences'>,
  changed: (preferences: Preferences) => void,
): Promise<KeptPreferences> {
  let preferences = await archive.preferences()
  return {
    now: () => preferences,
    async change(change) {
      if (change.nPerCount === 0)
        throw new Trouble(
          'invalid-input',
          'A scale of 0 makes every force 0.',
          'Type what a count is worth, or nothing.',
        )
      const given = Object.entries(change).filter(([, value]) => value !== undefined)
      preferences = await archive.setPreferences(Object.fromEntries(given))
      changed(preferences)
      return preferences
    },
  }
}
