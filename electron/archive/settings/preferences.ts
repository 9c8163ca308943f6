import { defaultPreferences, type Preferences, preferences as schema } from '#contract/settings/settings.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'

/** What the program remembers for its user. A value that this version cannot read counts as never set. */
export function preferences(database: Database): Preferences {
  let known: Preferences = defaultPreferences
  const rows = prepared<{ name: string; value: string }>(database, 'SELECT name, value FROM preference').all()
  for (const { name, value } of rows) {
    const changed = schema.safeParse({ ...known, [name]: JSON.parse(value) })
    if (changed.success) known = changed.data
  }
  return known
}

/** Changes what is given and leaves the rest. */
export function setPreferences(database: Database, change: Partial<Preferences>): Preferences {
  return inTransaction(database, () => {
    const given = Object.entries(change).filter(([, value]) => value !== undefined)
    const changed = schema.parse({ ...preferences(database), ...Object.fromEntries(given) })
    for (const [name] of given)
      prepared(
        database,
        'INSERT INTO preference (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
      ).run(name, canonicalJson(changed[name as keyof Preferences]))
    touch(database, 'preferences')
    return changed
  })
}
