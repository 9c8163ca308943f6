import { deed } from '../procedure.ts'
import { preferences, preferencesChange } from './settings.ts'

/** What the program remembers for its user; read with `app.info`. */
export const settingsProcedures = {
  'preferences.set': deed({ input: preferencesChange, output: preferences }),
}
