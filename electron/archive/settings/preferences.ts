import { createHash } from 'node:crypto'
import { defaultPreferences, type Preferences, preferences as schema } from '#contract/settings/settings.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'

type Row = { name: string; value: string }

/** The row whose value is the checksum of all others; archives of programs that kept none have no such row. */
const checksumName = 'checksum'

/** What every force and every break is judged by: not used where the checksum says that something was changed. */
const judging: readonly (keyof Preferences)[] = ['nPerCount', 'capacityN', 'detection']

/**
 * What the program remembers for its user. A value that this version cannot read counts as never set, and where the checksum
 * does not hold so do those that forces and breaks are judged by.
 */
export function preferences(database: Database): Preferences {
  const { rows, sound } = storedRows(database)
  let known: Preferences = defaultPreferences
  for (const { name, value } of rows) {
    if (!sound && (judging as readonly string[]).includes(name)) continue
    const changed = schema.safeParse({ ...known, [name]: jsonOr(value) })
    if (changed.success) known = changed.data
  }
  return known
}

/** Whether what the program remembers for its user is what it stored. */
export function arePreferencesSound(database: Database): boolean {
  return storedRows(database).sound
}

/** Changes what is given and leaves the rest; from then on all of it has its checksum. */
export function setPreferences(database: Database, change: Partial<Preferences>): Preferences {
  return inTransaction(database, () => {
    const given = Object.entries(change).filter(([, value]) => value !== undefined)
    const changed = schema.parse({ ...preferences(database), ...Object.fromEntries(given) })
    // What is not used any more must not be vouched for either
    const names = arePreferencesSound(database) ? given.map(([name]) => name) : Object.keys(changed)
    for (const name of names) store(database, name, changed[name as keyof Preferences])
    store(database, checksumName, checksumOf(storedRows(database).rows))
    touch(database, 'preferences')
    return changed
  })
}

function store(database: Database, name: string, value: unknown): void {
  prepared(
    database,
    'INSERT INTO preference (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  ).run(name, canonicalJson(value))
}

function storedRows(database: Database): { rows: Row[]; sound: boolean } {
  const all = prepared<Row>(database, 'SELECT name, value FROM preference ORDER BY name').all()
  const rows = all.filter(({ name }) => name !== checksumName)
  const kept = all.find(({ name }) => name === checksumName)
  return { rows, sound: kept === undefined || kept.value === canonicalJson(checksumOf(rows)) }
}

/** SHA-256 over names and values, each followed by a line feed, in the order of the names. */
function checksumOf(rows: readonly Row[]): string {
  const hash = createHash('sha256')
  for (const { name, value } of rows) hash.update(`${name}\n${value}\n`)
  return hash.digest('hex')
}

/** undefined: it is no JSON. */
function jsonOr(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
