import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'

export const migration: Migration = {
  number: 3,
  title: 'overruled peaks, the course of a load, and breaks evaluated again',
  sql: `
-- A person's word may be of further kinds, with a cause or a sample. The rows are copied as they are.
CREATE TABLE decision_of_format_3 (
  decision_id    INTEGER PRIMARY KEY,
  break_id       INTEGER NOT NULL REFERENCES break_header (break_id),
  recorded_at    TEXT NOT NULL,
  by             TEXT NOT NULL CHECK (by <> ''),
  reason         TEXT NOT NULL CHECK (reason <> ''),
  kind           TEXT NOT NULL CHECK (kind IN ('set-aside', 'taken-back', 'reassigned',
                   'peak-picked', 'premature-failure', 'peak-as-found')),
  specimen_id    INTEGER,
  cause          TEXT CHECK (cause IS NULL OR (kind = 'set-aside'
                   AND cause IN ('specimen-slipped', 'wrong-block', 'fixture-touched', 'other'))),
  sample_time_s  REAL,
  sample_reading REAL,
  CHECK ((kind IN ('peak-picked', 'premature-failure')) = (sample_time_s IS NOT NULL)),
  CHECK ((sample_time_s IS NULL) = (sample_reading IS NULL))
) STRICT;
INSERT INTO decision_of_format_3 (decision_id, break_id, recorded_at, by, reason, kind, specimen_id)
  SELECT decision_id, break_id, recorded_at, by, reason, kind, specimen_id FROM decision ORDER BY decision_id;
DROP TABLE decision;
ALTER TABLE decision_of_format_3 RENAME TO decision;
CREATE INDEX decision_of_break ON decision (break_id, decision_id);
${appendOnly('decision', 'decision_id = NEW.decision_id')}

CREATE TABLE reevaluation (
  reevaluation_id INTEGER PRIMARY KEY,
  begun_at        TEXT NOT NULL,
  by              TEXT NOT NULL CHECK (by <> ''),
  method          TEXT NOT NULL,
  calibration_id  INTEGER REFERENCES calibration (calibration_id),
  settings        TEXT NOT NULL CHECK (json_valid(settings)),
  break_ids       TEXT NOT NULL CHECK (json_valid(break_ids))
) STRICT;
${appendOnly('reevaluation', 'reevaluation_id = NEW.reevaluation_id')}

CREATE TABLE reevaluation_end (
  reevaluation_id INTEGER PRIMARY KEY REFERENCES reevaluation (reevaluation_id),
  ended_at        TEXT NOT NULL,
  ending          TEXT NOT NULL CHECK (ending IN ('complete', 'cancelled', 'cut-short')),
  problems        TEXT NOT NULL CHECK (json_valid(problems))
) STRICT;
${appendOnly('reevaluation_end', 'reevaluation_id = NEW.reevaluation_id')}

CREATE TABLE reevaluation_decision (
  reevaluation_decision_id INTEGER PRIMARY KEY,
  reevaluation_id          INTEGER NOT NULL REFERENCES reevaluation (reevaluation_id),
  recorded_at              TEXT NOT NULL,
  by                       TEXT NOT NULL CHECK (by <> ''),
  reason                   TEXT NOT NULL CHECK (reason <> ''),
  kind                     TEXT NOT NULL CHECK (kind IN ('adopted', 'dropped'))
) STRICT;
CREATE INDEX reevaluation_decision_of ON reevaluation_decision (reevaluation_id, reevaluation_decision_id);
${appendOnly('reevaluation_decision', 'reevaluation_decision_id = NEW.reevaluation_decision_id')}

ALTER TABLE evaluation ADD COLUMN course TEXT CHECK (json_valid(course));
ALTER TABLE evaluation ADD COLUMN reevaluation_id INTEGER REFERENCES reevaluation (reevaluation_id);
ALTER TABLE evaluation ADD COLUMN beside_id INTEGER REFERENCES evaluation (evaluation_id);
CREATE UNIQUE INDEX evaluation_of_reevaluation ON evaluation (reevaluation_id, break_id) WHERE reevaluation_id IS NOT NULL;
DROP TRIGGER evaluation_is_never_replaced;
CREATE TRIGGER evaluation_is_never_replaced BEFORE INSERT ON evaluation
WHEN EXISTS (SELECT 1 FROM evaluation WHERE evaluation_id = NEW.evaluation_id)
  OR EXISTS (SELECT 1 FROM evaluation WHERE reevaluation_id = NEW.reevaluation_id AND break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'evaluation is append-only: a record is never replaced'); END;
CREATE TRIGGER evaluation_ends_with_its_reevaluation BEFORE INSERT ON evaluation
WHEN EXISTS (SELECT 1 FROM reevaluation_end WHERE reevaluation_id = NEW.reevaluation_id)
BEGIN SELECT RAISE(ABORT, 'evaluation is append-only: a re-evaluation that has ended takes no more results'); END;

-- Derived lists: why a break is set aside, and the decision whose sample stands for its peak.
ALTER TABLE break_current ADD COLUMN set_aside_cause TEXT;
ALTER TABLE break_current ADD COLUMN peak_decision_id INTEGER;
`,
}
