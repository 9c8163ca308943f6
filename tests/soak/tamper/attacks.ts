import { copyFileSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import { firstPreviousHash, type LedgerRow, ledgerHash } from '#archive/core/ledger.ts'
import { behindTheTriggers } from '../../archive/behindTheTriggers.ts'
import { type Ended, type Place, swap } from './tamperedStudy.ts'

/** Where a person is told: when the program opens the archive, by verify, by verify with the head that was written down. */
export type Noticing = 'opening' | 'verify' | 'head'

export type Attack = {
  readonly name: string
  readonly ended?: Ended
  /** Where it must be noticed; nowhere: it does no harm, and all records must be there. */
  readonly noticed: readonly Noticing[]
  act(place: Place): void
}

const everywhere: readonly Noticing[] = ['opening', 'verify', 'head']

const edit = (path: string, work: (database: Database.Database) => void) => {
  const database = new Database(path)
  try {
    work(database)
  } finally {
    database.close()
  }
}
const unseen = (text: string) => (place: Place) => edit(place.study, (database) => behindTheTriggers(database, text))
const openly = (text: string) => (place: Place) => edit(place.study, (database) => void database.exec(text))
const inSchema = (text: string) => (place: Place) =>
  edit(place.study, (database) => {
    database.unsafeMode(true)
    database.pragma('writable_schema = ON')
    database.exec(text)
  })

/** Takes the newest specimen and its entry away, as if neither had ever been. */
const cutOff = unseen(`DELETE FROM specimen_current WHERE specimen_id = 6;
  DELETE FROM specimen_revision WHERE specimen_id = 6; DELETE FROM ledger WHERE seq = (SELECT max(seq) FROM ledger)`)

/** Changes an area everywhere it stands, and makes all hashes after it again. */
function editAndHash(place: Place): void {
  edit(place.study, (database) => {
    behindTheTriggers(
      database,
      `UPDATE specimen_revision SET area_mm2 = 500 WHERE specimen_id = 1;
       UPDATE specimen_current SET area_mm2 = 500 WHERE specimen_id = 1;
       UPDATE ledger SET content = replace(content, '"areaMm2":600', '"areaMm2":500')
         WHERE kind = 'specimen' AND record_id = 1;
       CREATE TABLE rehashed (seq INTEGER PRIMARY KEY, previous_hash TEXT, hash TEXT)`,
    )
    let previous = firstPreviousHash
    for (const row of database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').all()) {
      const hash = ledgerHash({ ...row, previous_hash: previous })
      database.prepare('INSERT INTO rehashed VALUES (?, ?, ?)').run(row.seq, previous, hash)
      previous = hash
    }
    behindTheTriggers(
      database,
      `UPDATE ledger SET (previous_hash, hash) = (SELECT r.previous_hash, r.hash FROM rehashed r WHERE r.seq = ledger.seq);
       DROP TABLE rehashed`,
    )
  })
}

function flip(path: string, byte: number): void {
  const bytes = readFileSync(path)
  bytes[byte < 0 ? bytes.length + byte : byte]! ^= 1
  writeFileSync(path, bytes)
}

const forgetHeads = ({ heads }: Place) => rmSync(heads)

/** The head as it was when the older copy was made: the hash of its newest entry. */
function lowerHead({ older, heads }: Place): void {
  const database = new Database(older, { readonly: true })
  const { seq, hash } = database.prepare('SELECT seq, hash FROM ledger ORDER BY seq DESC').get() as LedgerRow
  database.close()
  const kept = JSON.parse(readFileSync(heads, 'utf8')) as Record<string, { count: number; hash: string; path: string }>
  for (const head of Object.values(kept)) if (head.path.endsWith('study')) Object.assign(head, { count: seq, hash })
  writeFileSync(heads, JSON.stringify(kept))
}

/** From the frame header of the first commit in a journal: 32 bytes of its own header, 24 of the frame's (SQLite, "WAL File Format"). */
const firstFrame = 32 + 24

/** What somebody with other tools, a bad disk or a slip of the hand can do to an archive. */
export const attacks: readonly Attack[] = [
  { name: 'nothing at all', noticed: [], act: () => {} },
  { name: 'nothing, after a kill', ended: 'killed', noticed: [], act: () => {} },
  { name: 'the kept heads are deleted', noticed: [], act: forgetHeads },
  { name: 'a copy of now is put back', noticed: [], act: ({ study }) => writeFileSync(study, readFileSync(study)) },
  { name: 'the last record is cut off', noticed: everywhere, act: cutOff },
  { name: 'a record is edited and all is hashed again', noticed: everywhere, act: editAndHash },
  { name: 'the journal is dropped', ended: 'killed', noticed: everywhere, act: ({ study }) => rmSync(`${study}-wal`) },
  {
    name: 'the journal is emptied',
    ended: 'killed',
    noticed: everywhere,
    act: ({ study }) => truncateSync(`${study}-wal`),
  },
  {
    name: 'one bit of the journal flips, at its start',
    ended: 'killed',
    noticed: everywhere,
    act: ({ study }) => flip(`${study}-wal`, firstFrame),
  },
  {
    name: 'one bit of the journal flips, at its end',
    ended: 'killed',
    noticed: everywhere,
    act: ({ study }) => flip(`${study}-wal`, -1),
  },
  {
    name: 'an older copy is put back',
    noticed: everywhere,
    act: ({ study, older }) => copyFileSync(older, study),
  },
  {
    name: 'an older copy is put back beside the newer journal',
    ended: 'killed',
    // The journal may bring the newest entries of the chain with it, but not all that they speak of.
    noticed: ['verify'],
    act: ({ study, older }) => copyFileSync(older, study),
  },
  { name: 'two archives are swapped', noticed: everywhere, act: ({ study, other }) => swap(study, other) },
  {
    name: 'another archive is put in its place',
    noticed: everywhere,
    act: ({ study, other }) => copyFileSync(other, study),
  },
  {
    name: 'the last record is cut off and the kept heads deleted',
    noticed: ['head'],
    act: (place) => {
      cutOff(place)
      forgetHeads(place)
    },
  },
  {
    name: 'an older copy is put back, and the kept head made to fit',
    noticed: ['head'],
    act: (place) => {
      copyFileSync(place.older, place.study)
      lowerHead(place)
    },
  },
  {
    name: 'all triggers are dropped',
    noticed: ['opening', 'verify'],
    act: ({ study }) =>
      edit(study, (database) => {
        const names = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all()
        for (const name of names) database.exec(`DROP TRIGGER ${String(name)}`)
      }),
  },
  {
    name: 'a trigger is planted',
    noticed: ['opening', 'verify'],
    act: openly(`CREATE TRIGGER larger AFTER INSERT ON specimen_current
      BEGIN UPDATE specimen_current SET area_mm2 = area_mm2 * 1.1 WHERE specimen_id = NEW.specimen_id; END`),
  },
  { name: 'a view is planted', noticed: ['opening', 'verify'], act: openly('CREATE VIEW peaks AS SELECT 1') },
  { name: 'a table is planted', noticed: ['opening', 'verify'], act: openly('CREATE TABLE shelf (id INTEGER)') },
  { name: 'an index is dropped', noticed: ['opening', 'verify'], act: openly('DROP INDEX evaluation_of_break') },
  {
    name: 'a trigger is made to do nothing',
    noticed: ['opening', 'verify'],
    act: inSchema(
      "UPDATE sqlite_schema SET sql = replace(sql, 'SELECT RAISE', 'SELECT 1 OR RAISE') WHERE type = 'trigger'",
    ),
  },
  {
    name: 'a condition is taken out of a table',
    noticed: ['opening', 'verify'],
    act: inSchema("UPDATE sqlite_schema SET sql = replace(sql, 'CHECK (samples > 0)', '') WHERE name = 'curve_block'"),
  },
  { name: 'the format is said to be older', noticed: ['opening', 'verify'], act: openly('PRAGMA user_version = 4') },
  { name: 'the format is said to be newer', noticed: ['opening', 'verify'], act: openly('PRAGMA user_version = 99') },
  {
    name: 'the mark of the program is another',
    noticed: ['opening', 'verify'],
    act: openly('PRAGMA application_id = 1'),
  },
  { name: 'the file is emptied', noticed: everywhere, act: ({ study }) => truncateSync(study) },
  {
    name: 'half of the file is cut off',
    noticed: ['verify'],
    act: ({ study }) => truncateSync(study, Math.floor(readFileSync(study).length / 2)),
  },
  ...(
    [
      ['an area is edited', 'UPDATE specimen_revision SET area_mm2 = 500 WHERE specimen_id = 1'],
      ['a peak is edited', 'UPDATE evaluation SET peak_n = 9000 WHERE evaluation_id = 1'],
      ['a list is edited', 'UPDATE break_current SET peak_n = 9000 WHERE break_id = 1'],
      [
        'an entry of the chain is edited',
        "UPDATE ledger SET content = replace(content, '600', '700') WHERE kind = 'specimen'",
      ],
      ['an entry of the chain is removed', 'DELETE FROM ledger WHERE seq = 4'],
      ['a record is removed', 'DELETE FROM evaluation WHERE evaluation_id = 2'],
      [
        'a record is slipped in',
        `INSERT INTO assessment (break_id, recorded_at, by, note) SELECT 1, recorded_at, by, 'fine' FROM specimen_revision`,
      ],
      [
        'a curve is edited, and its checksum is taken over',
        'UPDATE curve_block SET first_mantissa = first_mantissa + 1',
      ],
      ['the history of the format is edited', "UPDATE format_history SET program = 'another'"],
      ['a rejected line is edited', "UPDATE rejected_line SET example = x'21' WHERE rejected_line_id = 1"],
    ] as const
  ).map(([name, text]): Attack => ({ name, noticed: ['verify'], act: unseen(text) })),
  {
    name: 'a capture that was running is edited',
    ended: 'killed',
    noticed: ['verify'],
    act: unseen('UPDATE running_block SET first_mantissa = first_mantissa + 1'),
  },
]
