import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'

/** Who recorded it and when. */
export const signed = `
  recorded_at TEXT NOT NULL,
  by          TEXT NOT NULL,`

const revised = (table: string, id: string) => `
CREATE TABLE ${table} (
  revision_id INTEGER PRIMARY KEY,
  ${id}       INTEGER NOT NULL,
  revision    INTEGER NOT NULL CHECK (revision > 0),${signed}
  reason      TEXT NOT NULL,
  fields      TEXT NOT NULL CHECK (json_valid(fields)),
  UNIQUE (${id}, revision)
) STRICT;
${appendOnly(table, `revision_id = NEW.revision_id OR (${id} = NEW.${id} AND revision = NEW.revision)`)}`

export const migration: Migration = {
  number: 6,
  title: 'catalogue, studies, sessions, results without a curve, and pictures',
  sql: `
ALTER TABLE specimen_revision ADD COLUMN wood TEXT;
ALTER TABLE specimen_revision ADD COLUMN board TEXT;

${revised('catalogue_revision', 'entry_id')}
CREATE TABLE catalogue_decision (
  catalogue_decision_id INTEGER PRIMARY KEY,${signed}
  reason        TEXT NOT NULL CHECK (reason <> ''),
  kind          TEXT NOT NULL CHECK (kind <> ''),
  from_entry_id INTEGER NOT NULL,
  into_entry_id INTEGER NOT NULL
) STRICT;
${appendOnly('catalogue_decision', 'catalogue_decision_id = NEW.catalogue_decision_id')}

${revised('study_revision', 'study_id')}
CREATE TABLE block (
  block_id       INTEGER PRIMARY KEY,
  study_id       INTEGER NOT NULL,${signed}
  running        INTEGER NOT NULL UNIQUE CHECK (running > 0),
  adhesive       TEXT NOT NULL CHECK (adhesive <> ''),
  joint_type     TEXT NOT NULL,
  gap_mm         REAL NOT NULL CHECK (gap_mm >= 0),
  exposure       TEXT NOT NULL,
  age_months     INTEGER,
  board          TEXT NOT NULL,
  breaking_order INTEGER NOT NULL
) STRICT;
CREATE INDEX block_of_study ON block (study_id, age_months, breaking_order);
${appendOnly('block', 'block_id = NEW.block_id OR running = NEW.running')}

CREATE TABLE label (
  running     INTEGER PRIMARY KEY CHECK (running > 0),
  specimen_id INTEGER NOT NULL UNIQUE,${signed.replace(/,$/, '')}
) STRICT;
${appendOnly('label', 'running = NEW.running OR specimen_id = NEW.specimen_id')}

CREATE TABLE pull_decision (
  pull_decision_id INTEGER PRIMARY KEY,${signed}
  reason            TEXT NOT NULL CHECK (reason <> ''),
  study_id          INTEGER NOT NULL,
  glued_on          TEXT,
  age_months        INTEGER NOT NULL,
  kind              TEXT NOT NULL CHECK (kind <> ''),
  due_on            TEXT,
  blocks_per_series INTEGER
) STRICT;
CREATE INDEX pull_decision_of_study ON pull_decision (study_id, pull_decision_id);
${appendOnly('pull_decision', 'pull_decision_id = NEW.pull_decision_id')}

CREATE TABLE glue_up (
  glue_up_id INTEGER PRIMARY KEY,${signed}
  study_id   INTEGER,
  fields     TEXT NOT NULL CHECK (json_valid(fields))
) STRICT;
${appendOnly('glue_up', 'glue_up_id = NEW.glue_up_id')}

CREATE TABLE glued_block (
  glued_block_id INTEGER PRIMARY KEY,
  recorded_at    TEXT NOT NULL,
  glue_up_id     INTEGER NOT NULL REFERENCES glue_up (glue_up_id),
  block_id       INTEGER UNIQUE REFERENCES block (block_id),
  specimen_id    INTEGER NOT NULL UNIQUE
) STRICT;
CREATE INDEX glued_block_of_glue_up ON glued_block (glue_up_id);
${appendOnly('glued_block', 'glued_block_id = NEW.glued_block_id OR block_id = NEW.block_id OR specimen_id = NEW.specimen_id')}

CREATE TABLE breaking_session (
  breaking_session_id INTEGER PRIMARY KEY,
  started_at          TEXT NOT NULL,
  by                  TEXT NOT NULL,
  title               TEXT NOT NULL,
  pulls               TEXT NOT NULL CHECK (json_valid(pulls)),
  specimen_ids        TEXT NOT NULL CHECK (json_valid(specimen_ids))
) STRICT;
${appendOnly('breaking_session', 'breaking_session_id = NEW.breaking_session_id')}

CREATE TABLE breaking_session_event (
  breaking_session_event_id INTEGER PRIMARY KEY,
  breaking_session_id INTEGER NOT NULL REFERENCES breaking_session (breaking_session_id),${signed}
  kind        TEXT NOT NULL CHECK (kind <> ''),
  specimen_id INTEGER,
  note        TEXT NOT NULL
) STRICT;
CREATE INDEX breaking_session_event_of ON breaking_session_event (breaking_session_id, breaking_session_event_id);
${appendOnly('breaking_session_event', 'breaking_session_event_id = NEW.breaking_session_event_id')}

CREATE TABLE import_run (
  import_run_id INTEGER PRIMARY KEY,${signed}
  file_name     TEXT NOT NULL,
  file_sha256   TEXT NOT NULL CHECK (length(file_sha256) = 64),
  mapping       TEXT NOT NULL
) STRICT;
${appendOnly('import_run', 'import_run_id = NEW.import_run_id')}

CREATE TABLE typed_result (
  typed_result_id INTEGER PRIMARY KEY,${signed}
  specimen_id     INTEGER NOT NULL,
  source          TEXT NOT NULL CHECK (source <> ''),
  import_run_id   INTEGER REFERENCES import_run (import_run_id),
  sheet_row       INTEGER,
  sheet_column    TEXT,
  peak_n          REAL CHECK (peak_n IS NULL OR peak_n > 0),
  strength_mpa   REAL CHECK (strength_mpa IS NULL OR strength_mpa > 0),
  wood_failure_percent REAL CHECK (wood_failure_percent IS NULL OR wood_failure_percent BETWEEN 0 AND 100),
  failure_pattern TEXT,
  broken_on       TEXT,
  age_months      REAL,
  resolution_n    REAL,
  read_by         TEXT NOT NULL,
  note            TEXT NOT NULL,
  CHECK (peak_n IS NOT NULL OR strength_mpa IS NOT NULL)
) STRICT;
CREATE INDEX typed_result_of_specimen ON typed_result (specimen_id, typed_result_id);
CREATE INDEX typed_result_of_import ON typed_result (import_run_id, sheet_row);
${appendOnly('typed_result', 'typed_result_id = NEW.typed_result_id')}

CREATE TABLE typed_result_decision (
  typed_result_decision_id INTEGER PRIMARY KEY,
  typed_result_id INTEGER NOT NULL REFERENCES typed_result (typed_result_id),${signed}
  reason          TEXT NOT NULL CHECK (reason <> ''),
  kind            TEXT NOT NULL CHECK (kind <> '')
) STRICT;
CREATE INDEX typed_result_decision_of ON typed_result_decision (typed_result_id, typed_result_decision_id);
${appendOnly('typed_result_decision', 'typed_result_decision_id = NEW.typed_result_decision_id')}

CREATE TABLE attachment (
  attachment_id INTEGER PRIMARY KEY,${signed}
  specimen_id   INTEGER,
  break_id      INTEGER,
  name          TEXT NOT NULL,
  media_type    TEXT NOT NULL,
  bytes         INTEGER NOT NULL CHECK (bytes > 0),
  sha256        TEXT NOT NULL CHECK (length(sha256) = 64),
  CHECK (specimen_id IS NOT NULL OR break_id IS NOT NULL)
) STRICT;
CREATE INDEX attachment_of_specimen ON attachment (specimen_id);
CREATE INDEX attachment_of_break ON attachment (break_id);
${appendOnly('attachment', 'attachment_id = NEW.attachment_id')}

-- The picture itself, under its hash, which the ledger holds.
CREATE TABLE attachment_bytes (
  sha256  TEXT PRIMARY KEY CHECK (length(sha256) = 64),
  content BLOB NOT NULL
) STRICT;
${appendOnly('attachment_bytes', 'sha256 = NEW.sha256')}

CREATE TABLE wood_picture (
  wood_picture_id INTEGER PRIMARY KEY,${signed}
  attachment_id   INTEGER NOT NULL REFERENCES attachment (attachment_id),
  corners         TEXT NOT NULL CHECK (json_valid(corners)),
  threshold       REAL NOT NULL,
  method          TEXT NOT NULL,
  mask_width      INTEGER NOT NULL,
  mask_height     INTEGER NOT NULL,
  mask            BLOB NOT NULL,
  proposed_percent REAL NOT NULL,
  decided_percent REAL NOT NULL
) STRICT;
CREATE INDEX wood_picture_of ON wood_picture (attachment_id, wood_picture_id);
${appendOnly('wood_picture', 'wood_picture_id = NEW.wood_picture_id')}

CREATE TABLE withdrawal (
  withdrawal_id INTEGER PRIMARY KEY,${signed}
  reason        TEXT NOT NULL CHECK (reason <> ''),
  specimen_id   INTEGER NOT NULL,
  kind          TEXT NOT NULL CHECK (kind <> '')
) STRICT;
CREATE INDEX withdrawal_of ON withdrawal (specimen_id, withdrawal_id);
${appendOnly('withdrawal', 'withdrawal_id = NEW.withdrawal_id')}
`,
}
