import type { Migration } from '../migration.ts'

/** Every finished table refuses UPDATE, DELETE and the silent deletion that INSERT OR REPLACE would be. */
export function appendOnly(table: string, key: string): string {
  return `
CREATE TRIGGER ${table}_is_never_changed BEFORE UPDATE ON ${table}
BEGIN SELECT RAISE(ABORT, '${table} is append-only: a record is never changed'); END;
CREATE TRIGGER ${table}_is_never_removed BEFORE DELETE ON ${table}
BEGIN SELECT RAISE(ABORT, '${table} is append-only: a record is never removed'); END;
CREATE TRIGGER ${table}_is_never_replaced BEFORE INSERT ON ${table}
WHEN EXISTS (SELECT 1 FROM ${table} WHERE ${key})
BEGIN SELECT RAISE(ABORT, '${table} is append-only: a record is never replaced'); END;
`
}

/** The columns of a coded stretch of a curve, the same for a running block and a sealed one. */
const blockColumns = `
  block          INTEGER NOT NULL CHECK (block >= 0),
  samples        INTEGER NOT NULL CHECK (samples > 0),
  first_us       INTEGER NOT NULL,
  last_us        INTEGER NOT NULL CHECK (last_us >= first_us),
  interval_us    INTEGER NOT NULL,
  times          BLOB NOT NULL,
  reading_coding TEXT NOT NULL CHECK (reading_coding IN ('decimal', 'float64')),
  decimals       INTEGER NOT NULL CHECK (decimals BETWEEN 0 AND 15),
  differences    INTEGER NOT NULL CHECK (differences BETWEEN 0 AND 2),
  first_mantissa INTEGER NOT NULL,
  first_step     INTEGER NOT NULL,
  readings       BLOB NOT NULL,
  sha256         TEXT NOT NULL CHECK (length(sha256) = 64),`

export const migration: Migration = {
  number: 1,
  title: 'the first format',
  sql: `
CREATE TABLE format_history (
  format_version INTEGER PRIMARY KEY,
  reached_at     TEXT NOT NULL,
  program        TEXT NOT NULL
) STRICT;

CREATE TABLE ledger (
  seq           INTEGER PRIMARY KEY,
  recorded_at   TEXT NOT NULL,
  kind          TEXT NOT NULL CHECK (kind IN ('specimen', 'session', 'break', 'evaluation', 'assessment', 'decision')),
  record_id     INTEGER NOT NULL,
  content       TEXT NOT NULL,
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash          TEXT NOT NULL CHECK (length(hash) = 64),
  UNIQUE (kind, record_id)
) STRICT;
${appendOnly('ledger', 'seq = NEW.seq OR (kind = NEW.kind AND record_id = NEW.record_id)')}

CREATE TABLE specimen_revision (
  revision_id       INTEGER PRIMARY KEY,
  specimen_id       INTEGER NOT NULL,
  revision          INTEGER NOT NULL CHECK (revision > 0),
  recorded_at       TEXT NOT NULL,
  by                TEXT NOT NULL,
  reason            TEXT NOT NULL,
  number            TEXT NOT NULL CHECK (number <> ''),
  adhesive          TEXT NOT NULL,
  lot               TEXT NOT NULL,
  joint_type        TEXT NOT NULL,
  exposure          TEXT NOT NULL,
  bond_line_gap_mm  REAL,
  overlap_length_mm REAL,
  overlap_width_mm  REAL,
  area_mm2          REAL,
  glued_on          TEXT,
  place             TEXT NOT NULL,
  notes             TEXT NOT NULL,
  demo              INTEGER NOT NULL CHECK (demo IN (0, 1)),
  UNIQUE (specimen_id, revision)
) STRICT;
${appendOnly('specimen_revision', 'revision_id = NEW.revision_id OR (specimen_id = NEW.specimen_id AND revision = NEW.revision)')}

CREATE TABLE capture_session (
  session_id  INTEGER PRIMARY KEY,
  started_at  TEXT NOT NULL,
  source      TEXT NOT NULL,
  line_format TEXT NOT NULL,
  program     TEXT NOT NULL
) STRICT;
${appendOnly('capture_session', 'session_id = NEW.session_id')}

CREATE TABLE rejected_line (
  rejected_line_id INTEGER PRIMARY KEY,
  session_id       INTEGER NOT NULL REFERENCES capture_session (session_id),
  recorded_at      TEXT NOT NULL,
  count            INTEGER NOT NULL CHECK (count > 0),
  example          BLOB
) STRICT;
CREATE INDEX rejected_line_of_session ON rejected_line (session_id);
${appendOnly('rejected_line', 'rejected_line_id = NEW.rejected_line_id')}

CREATE TABLE break_header (
  break_id     INTEGER PRIMARY KEY,
  session_id   INTEGER NOT NULL REFERENCES capture_session (session_id),
  specimen_id  INTEGER,
  started_at   TEXT NOT NULL,
  reading_unit TEXT NOT NULL,
  scale        TEXT NOT NULL CHECK (json_valid(scale)),
  tare         TEXT CHECK (json_valid(tare)),
  settings     TEXT NOT NULL CHECK (json_valid(settings))
) STRICT;
${appendOnly('break_header', 'break_id = NEW.break_id')}

CREATE TABLE break_end (
  break_id        INTEGER PRIMARY KEY REFERENCES break_header (break_id),
  ended_at        TEXT NOT NULL,
  ending          TEXT NOT NULL CHECK (ending IN ('complete', 'interrupted', 'recovered')),
  samples         INTEGER NOT NULL CHECK (samples >= 0),
  missing_samples INTEGER NOT NULL CHECK (missing_samples >= 0),
  curve_sha256    TEXT NOT NULL CHECK (length(curve_sha256) = 64)
) STRICT;
${appendOnly('break_end', 'break_id = NEW.break_id')}

CREATE TABLE curve_block (
  break_id       INTEGER NOT NULL REFERENCES break_header (break_id),${blockColumns}
  PRIMARY KEY (break_id, block)
) STRICT;
${appendOnly('curve_block', 'break_id = NEW.break_id AND block = NEW.block')}
CREATE TRIGGER curve_block_is_sealed BEFORE INSERT ON curve_block
WHEN EXISTS (SELECT 1 FROM break_end WHERE break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'curve_block is append-only: the curve of a finished break takes no more samples'); END;

CREATE TABLE running_block (
  break_id       INTEGER NOT NULL REFERENCES break_header (break_id),${blockColumns}
  PRIMARY KEY (break_id, block)
) STRICT;
CREATE TRIGGER running_block_is_never_changed BEFORE UPDATE ON running_block
BEGIN SELECT RAISE(ABORT, 'running_block is append-only: samples are never changed'); END;
CREATE TRIGGER running_block_is_never_replaced BEFORE INSERT ON running_block
WHEN EXISTS (SELECT 1 FROM running_block WHERE break_id = NEW.break_id AND block = NEW.block)
BEGIN SELECT RAISE(ABORT, 'running_block is append-only: samples are never replaced'); END;
CREATE TRIGGER running_block_ends_with_the_break BEFORE INSERT ON running_block
WHEN EXISTS (SELECT 1 FROM break_end WHERE break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'running_block is append-only: a finished break takes no more samples'); END;
CREATE TRIGGER running_block_stays_until_sealed BEFORE DELETE ON running_block
WHEN NOT EXISTS (SELECT 1 FROM break_end WHERE break_id = OLD.break_id)
  OR NOT EXISTS (SELECT 1 FROM curve_block WHERE break_id = OLD.break_id AND OLD.first_us BETWEEN first_us AND last_us)
  OR NOT EXISTS (SELECT 1 FROM curve_block WHERE break_id = OLD.break_id AND OLD.last_us BETWEEN first_us AND last_us)
BEGIN SELECT RAISE(ABORT, 'running_block is append-only: samples stay until the sealed curve covers them'); END;

CREATE TABLE evaluation (
  evaluation_id          INTEGER PRIMARY KEY,
  break_id               INTEGER NOT NULL REFERENCES break_header (break_id),
  made_at                TEXT NOT NULL,
  method                 TEXT NOT NULL,
  settings               TEXT NOT NULL CHECK (json_valid(settings)),
  scale                  TEXT NOT NULL CHECK (json_valid(scale)),
  tare_offset            REAL NOT NULL,
  outcome                TEXT NOT NULL CHECK (outcome IN ('break', 'unloading', 'none')),
  peak_n                 REAL,
  peak_time_s            REAL,
  onset_time_s           REAL,
  break_time_s           REAL,
  sample_rate_hz         REAL,
  samples                INTEGER NOT NULL,
  missing_samples        INTEGER NOT NULL,
  noise_n                REAL,
  loading_rate_n_per_s   REAL,
  sampling_bound_n       REAL,
  sampling_bound_percent REAL,
  after_break_n          REAL,
  flags                  TEXT NOT NULL CHECK (json_valid(flags)),
  events                 TEXT NOT NULL CHECK (json_valid(events))
) STRICT;
CREATE INDEX evaluation_of_break ON evaluation (break_id, evaluation_id);
${appendOnly('evaluation', 'evaluation_id = NEW.evaluation_id')}

CREATE TABLE assessment (
  assessment_id        INTEGER PRIMARY KEY,
  break_id             INTEGER NOT NULL REFERENCES break_header (break_id),
  recorded_at          TEXT NOT NULL,
  by                   TEXT NOT NULL,
  wood_failure_percent REAL CHECK (wood_failure_percent BETWEEN 0 AND 100),
  failure_pattern      TEXT,
  note                 TEXT NOT NULL
) STRICT;
CREATE INDEX assessment_of_break ON assessment (break_id, assessment_id);
${appendOnly('assessment', 'assessment_id = NEW.assessment_id')}

CREATE TABLE decision (
  decision_id INTEGER PRIMARY KEY,
  break_id    INTEGER NOT NULL REFERENCES break_header (break_id),
  recorded_at TEXT NOT NULL,
  by          TEXT NOT NULL CHECK (by <> ''),
  reason      TEXT NOT NULL CHECK (reason <> ''),
  kind        TEXT NOT NULL CHECK (kind IN ('set-aside', 'taken-back', 'reassigned')),
  specimen_id INTEGER
) STRICT;
CREATE INDEX decision_of_break ON decision (break_id, decision_id);
${appendOnly('decision', 'decision_id = NEW.decision_id')}

CREATE TABLE preference (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;

-- Derived: what stands in force now, so that lists are quick. Nothing is recorded here; it can be made again from the rest.
CREATE TABLE break_current (
  break_id      INTEGER PRIMARY KEY REFERENCES break_header (break_id),
  started_at    TEXT NOT NULL,
  specimen_id   INTEGER,
  evaluation_id INTEGER,
  assessment_id INTEGER,
  set_aside     TEXT,
  outcome       TEXT,
  peak_n        REAL,
  wood_failure_percent REAL,
  note_search   TEXT NOT NULL
) STRICT;
CREATE INDEX break_current_of_specimen ON break_current (specimen_id, break_id);

CREATE TABLE specimen_current (
  specimen_id     INTEGER PRIMARY KEY,
  revision_id     INTEGER NOT NULL REFERENCES specimen_revision (revision_id),
  number_folded   TEXT NOT NULL UNIQUE,
  number_key      TEXT NOT NULL,
  adhesive_key    TEXT NOT NULL,
  joint_type_key  TEXT NOT NULL,
  exposure_key    TEXT NOT NULL,
  area_mm2        REAL,
  search          TEXT NOT NULL,
  demo            INTEGER NOT NULL,
  break_in_force  INTEGER,
  any_set_aside   INTEGER NOT NULL,
  started_at      TEXT,
  peak_n          REAL,
  wood_failure_percent REAL
) STRICT;
CREATE INDEX specimen_current_by_number ON specimen_current (number_key, specimen_id);
CREATE INDEX specimen_current_waiting ON specimen_current (number_key, specimen_id) WHERE break_in_force IS NULL;
`,
}
