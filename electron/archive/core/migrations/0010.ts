import type { Migration } from '../migration.ts'
import { appendOnly } from './0001.ts'
import { signed } from './0006.ts'

export const migration: Migration = {
  number: 10,
  title: 'climate of the stores',
  sql: `
CREATE TABLE climate_import (
  climate_import_id  INTEGER PRIMARY KEY,${signed}
  store_kind         TEXT NOT NULL CHECK (store_kind <> ''),
  store              TEXT NOT NULL CHECK (store <> ''),
  file_name          TEXT NOT NULL,
  file_sha256        TEXT NOT NULL CHECK (length(file_sha256) = 64),
  mapping            TEXT NOT NULL CHECK (json_valid(mapping)),
  temperature_unit   TEXT NOT NULL CHECK (temperature_unit <> ''),
  readings           INTEGER NOT NULL CHECK (readings > 0),
  humidity_readings  INTEGER NOT NULL CHECK (humidity_readings BETWEEN 0 AND readings),
  rejected           INTEGER NOT NULL CHECK (rejected >= 0),
  from_unix_s        INTEGER NOT NULL,
  to_unix_s          INTEGER NOT NULL CHECK (to_unix_s >= from_unix_s),
  temperature_sha256 TEXT NOT NULL CHECK (length(temperature_sha256) = 64),
  humidity_sha256    TEXT NOT NULL CHECK (length(humidity_sha256) = 64),
  simulated          INTEGER NOT NULL CHECK (simulated IN (0, 1))
) STRICT;
${appendOnly('climate_import', 'climate_import_id = NEW.climate_import_id')}

-- Coded as the stretches of a curve are, with whole seconds since 1970 instead of microseconds.
CREATE TABLE climate_block (
  climate_import_id INTEGER NOT NULL REFERENCES climate_import (climate_import_id),
  quantity       TEXT NOT NULL CHECK (quantity <> ''),
  block          INTEGER NOT NULL CHECK (block >= 0),
  readings_held  INTEGER NOT NULL CHECK (readings_held > 0),
  first_unix_s   INTEGER NOT NULL,
  last_unix_s    INTEGER NOT NULL CHECK (last_unix_s >= first_unix_s),
  interval_s     INTEGER NOT NULL,
  times          BLOB NOT NULL,
  reading_coding TEXT NOT NULL CHECK (reading_coding IN ('decimal', 'float64')),
  decimals       INTEGER NOT NULL CHECK (decimals BETWEEN 0 AND 15),
  differences    INTEGER NOT NULL CHECK (differences BETWEEN 0 AND 2),
  first_mantissa INTEGER NOT NULL,
  first_step     INTEGER NOT NULL,
  readings       BLOB NOT NULL,
  sha256         TEXT NOT NULL CHECK (length(sha256) = 64),
  PRIMARY KEY (climate_import_id, quantity, block)
) STRICT;
${appendOnly('climate_block', 'climate_import_id = NEW.climate_import_id AND quantity = NEW.quantity AND block = NEW.block')}

CREATE TABLE climate_decision (
  climate_decision_id INTEGER PRIMARY KEY,
  climate_import_id   INTEGER NOT NULL REFERENCES climate_import (climate_import_id),${signed}
  reason              TEXT NOT NULL CHECK (reason <> ''),
  kind                TEXT NOT NULL CHECK (kind <> '')
) STRICT;
CREATE INDEX climate_decision_of ON climate_decision (climate_import_id, climate_decision_id);
${appendOnly('climate_decision', 'climate_decision_id = NEW.climate_decision_id')}
`,
}
