import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../database.ts'
import { appendLedger } from '../ledger.ts'
import type { Migration } from '../migration.ts'

const namedColumns = ['adhesive', 'lot', 'wood', 'board', 'joint_type', 'exposure', 'place']

export const migration: Migration = {
  number: 7,
  title: 'names of the catalogue',
  sql: `
-- Derived, like the current rows: each entry with its newest name and what it counts as after all merges, and every name that
-- an entry ever had.
CREATE TABLE catalogue_current (
  entry_id      INTEGER PRIMARY KEY,
  revision_id   INTEGER NOT NULL REFERENCES catalogue_revision (revision_id),
  kind          TEXT NOT NULL,
  name          TEXT NOT NULL,
  name_key      TEXT NOT NULL,
  search        TEXT NOT NULL,
  into_entry_id INTEGER NOT NULL
) STRICT;
CREATE TABLE catalogue_name (
  kind     TEXT NOT NULL,
  scope    INTEGER NOT NULL,
  name_key TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES catalogue_current (entry_id),
  PRIMARY KEY (kind, scope, name_key)
) STRICT, WITHOUT ROWID;

-- The entries that a specimen's names stand for; NULL: it names nothing, or what the catalogue cannot hold.
${namedColumns.map((name) => `ALTER TABLE specimen_current ADD COLUMN ${name}_id INTEGER;`).join('\n')}
`,
  run: enterNames,
}

type Revision = Record<'adhesive' | 'lot' | 'joint_type' | 'exposure' | 'place' | 'by', string>

/** No entry has a longer name; a text that an older program took beyond that stays a text. */
const longestName = 200

/** Gives each name that stands in records an entry, in the order in which they were written; the records stay as they are. */
function enterNames(database: Database, instant: string): void {
  const known = new Set<string>()
  const put = database.prepare(
    `INSERT INTO catalogue_revision (entry_id, revision, recorded_at, by, reason, fields) VALUES (?, 1, ?, ?, ?, ?)`,
  )
  const by = 'migration'
  const reason = 'named in the archive before it had a catalogue'
  const enter = (kind: string, written: string, of: string, details: object) => {
    const name = written.trim()
    const key = JSON.stringify([kind, naturalKey(of), naturalKey(name)])
    if (naturalKey(name) === '' || name.length > longestName || known.has(key)) return
    known.add(key)
    const entryId = known.size
    const fields = { kind, name, notes: '', ...details }
    const { lastInsertRowid } = put.run(entryId, instant, by, reason, canonicalJson(fields))
    const content = { entryId, revision: 1, recordedAt: instant, by, reason, fields }
    appendLedger(database, 'catalogue-entry', Number(lastInsertRowid), instant, content)
  }
  const revisions = database
    .prepare<[], Revision>(
      'SELECT adhesive, lot, joint_type, exposure, place, by FROM specimen_revision ORDER BY revision_id',
    )
    .all()
  for (const { adhesive, lot, joint_type, exposure, place, by: who } of revisions) {
    enter('adhesive', adhesive, '', noAdhesive)
    if (adhesive.trim().length <= longestName)
      enter('lot', lot, adhesive, { adhesive: adhesive.trim(), openedOn: null, expiresOn: null, bottle: '' })
    enter('joint-type', joint_type, '', { overlapLengthMm: null, overlapWidthMm: null, areaMm2: null })
    enter('exposure', exposure, '', {})
    enter('place', place, '', { capacityBlocks: null, temperatureC: null, humidityPercent: null })
    enter('operator', who, '', {})
  }
  const people = database
    .prepare<[], { by: string }>(
      `SELECT by FROM (SELECT by, recorded_at FROM assessment UNION ALL SELECT by, recorded_at FROM decision)
       ORDER BY recorded_at`,
    )
    .all()
  for (const { by: who } of people) enter('operator', who, '', {})
}

const noAdhesive = { adhesiveClass: '', maker: '', mix: '', openTimeMin: null, clampTimeMin: null, safetyNote: '' }
