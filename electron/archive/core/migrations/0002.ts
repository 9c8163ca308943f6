import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'

export const migration: Migration = {
  number: 2,
  title: 'calibrations, their readings, and checks with a weight',
  sql: `
-- The ledger takes further kinds of record. Its rows are copied as they are, so that no hash changes.
CREATE TABLE ledger_of_format_2 (
  seq           INTEGER PRIMARY KEY,
  recorded_at   TEXT NOT NULL,
  kind          TEXT NOT NULL CHECK (kind <> ''),
  record_id     INTEGER NOT NULL,
  content       TEXT NOT NULL,
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash          TEXT NOT NULL CHECK (length(hash) = 64),
  UNIQUE (kind, record_id)
) STRICT;
INSERT INTO ledger_of_format_2 SELECT seq, recorded_at, kind, record_id, content, previous_hash, hash FROM ledger ORDER BY seq;
DROP TABLE ledger;
ALTER TABLE ledger_of_format_2 RENAME TO ledger;
${appendOnly('ledger', 'seq = NEW.seq OR (kind = NEW.kind AND record_id = NEW.record_id)')}

CREATE TABLE weight_set (
  weight_set_id INTEGER PRIMARY KEY,
  recorded_at   TEXT NOT NULL,
  by            TEXT NOT NULL,
  weights       TEXT NOT NULL CHECK (json_valid(weights))
) STRICT;
${appendOnly('weight_set', 'weight_set_id = NEW.weight_set_id')}

CREATE TABLE calibration_routine (
  routine_id INTEGER PRIMARY KEY,
  begun_at   TEXT NOT NULL,
  by         TEXT NOT NULL,
  source     TEXT NOT NULL,
  plan       TEXT NOT NULL CHECK (json_valid(plan))
) STRICT;
${appendOnly('calibration_routine', 'routine_id = NEW.routine_id')}

CREATE TABLE calibration_reading (
  reading_id INTEGER PRIMARY KEY,
  routine_id INTEGER NOT NULL REFERENCES calibration_routine (routine_id),
  number     INTEGER NOT NULL CHECK (number >= 0),
  run        INTEGER NOT NULL CHECK (run > 0),
  direction  TEXT NOT NULL CHECK (direction IN ('up', 'down')),
  weights    TEXT NOT NULL CHECK (json_valid(weights)),
  force_n    REAL NOT NULL,
  mean       REAL NOT NULL,
  sd         REAL NOT NULL CHECK (sd >= 0),
  count      INTEGER NOT NULL CHECK (count > 0),
  taken_at   TEXT NOT NULL,
  UNIQUE (routine_id, number)
) STRICT;
${appendOnly('calibration_reading', 'reading_id = NEW.reading_id OR (routine_id = NEW.routine_id AND number = NEW.number)')}

CREATE TABLE calibration_routine_end (
  routine_id INTEGER PRIMARY KEY REFERENCES calibration_routine (routine_id),
  ended_at   TEXT NOT NULL,
  reason     TEXT NOT NULL
) STRICT;
${appendOnly('calibration_routine_end', 'routine_id = NEW.routine_id')}

CREATE TABLE calibration (
  calibration_id INTEGER PRIMARY KEY,
  routine_id     INTEGER REFERENCES calibration_routine (routine_id),
  name           TEXT NOT NULL CHECK (name <> ''),
  made_at        TEXT NOT NULL,
  by             TEXT NOT NULL,
  supersedes     INTEGER REFERENCES calibration (calibration_id),
  due_on         TEXT,
  source         TEXT NOT NULL,
  device         TEXT NOT NULL CHECK (device IN ('serial', 'virtual')),
  reading_unit   TEXT NOT NULL,
  circumstances  TEXT CHECK (json_valid(circumstances)),
  weights        TEXT NOT NULL CHECK (json_valid(weights)),
  readings       TEXT NOT NULL CHECK (json_valid(readings)),
  rows           TEXT NOT NULL CHECK (json_valid(rows)),
  creep          TEXT NOT NULL CHECK (json_valid(creep)),
  assessment     TEXT NOT NULL CHECK (json_valid(assessment)),
  note           TEXT NOT NULL
) STRICT;
${appendOnly('calibration', 'calibration_id = NEW.calibration_id')}

CREATE TABLE calibration_decision (
  calibration_decision_id INTEGER PRIMARY KEY,
  recorded_at             TEXT NOT NULL,
  by                      TEXT NOT NULL CHECK (by <> ''),
  reason                  TEXT NOT NULL,
  calibration_id          INTEGER REFERENCES calibration (calibration_id)
) STRICT;
${appendOnly('calibration_decision', 'calibration_decision_id = NEW.calibration_decision_id')}

CREATE TABLE check_weight (
  check_id       INTEGER PRIMARY KEY,
  calibration_id INTEGER NOT NULL REFERENCES calibration (calibration_id),
  taken_at       TEXT NOT NULL,
  by             TEXT NOT NULL,
  weight         TEXT NOT NULL,
  expected_n     REAL NOT NULL CHECK (expected_n > 0),
  indicated_n    REAL NOT NULL,
  sd_n           REAL NOT NULL CHECK (sd_n >= 0),
  count          INTEGER NOT NULL CHECK (count > 0)
) STRICT;
CREATE INDEX check_weight_of_calibration ON check_weight (calibration_id, weight, check_id);
${appendOnly('check_weight', 'check_id = NEW.check_id')}
`,
}
