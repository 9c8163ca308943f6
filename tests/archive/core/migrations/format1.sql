-- An archive in format 1 as breakledger 0.1.0 wrote it (sqlite3's .dump), from the invented study of the tests.
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE format_history (
  format_version INTEGER PRIMARY KEY,
  reached_at     TEXT NOT NULL,
  program        TEXT NOT NULL
) STRICT;
INSERT INTO format_history VALUES(1,'2031-05-02T09:30:00.000Z','breakledger 0.1.0');
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
INSERT INTO ledger VALUES(1,'2031-05-02T09:30:00.000Z','specimen',1,'{"by":"bench","fields":{"adhesive":"casein C1","areaMm2":600,"bondLineGapMm":0,"demo":true,"exposure":"loft","gluedOn":"2031-03-01","jointType":"long grain to long grain","lot":"C1-2031-a","notes":"","number":"C1-LL-1","overlapLengthMm":30,"overlapWidthMm":20,"place":"shelf 2"},"reason":"","recordedAt":"2031-05-02T09:30:00.000Z","revision":1,"specimenId":1}','0000000000000000000000000000000000000000000000000000000000000000','efd60d5c3cf297237b54dc8f1a56b72892624555f5c8c9cce80f871d84aaac09');
INSERT INTO ledger VALUES(2,'2031-05-02T09:30:00.000Z','specimen',2,'{"by":"bench","fields":{"adhesive":"casein C1","areaMm2":600,"bondLineGapMm":0,"demo":true,"exposure":"loft","gluedOn":"2031-03-01","jointType":"long grain to long grain","lot":"C1-2031-a","notes":"","number":"C1-LL-2","overlapLengthMm":30,"overlapWidthMm":20,"place":"shelf 2"},"reason":"","recordedAt":"2031-05-02T09:30:00.000Z","revision":1,"specimenId":2}','efd60d5c3cf297237b54dc8f1a56b72892624555f5c8c9cce80f871d84aaac09','3cf940508140df287a160ffd09363b5e9a39eb297a7abc19ae227c83b0af8253');
INSERT INTO ledger VALUES(3,'2031-05-02T09:30:00.000Z','session',1,'{"lineFormat":"number","program":"breakledger 0.1.0","sessionId":1,"source":"virtual amplifier: brittle","startedAt":"2031-05-02T09:30:00.000Z"}','3cf940508140df287a160ffd09363b5e9a39eb297a7abc19ae227c83b0af8253','bb40e0038b9c4c6dd1472b6941abcb50a097b64b721dc37b0622417c37b3f082');
INSERT INTO ledger VALUES(4,'2031-05-02T09:30:00.000Z','break',1,'{"end":{"breakId":1,"curveSha256":"6b425746af01b6733e5a6018ec0d2a1be1d90e67f3808fc9dae5b0ea0f8e728f","endedAt":"2031-05-02T09:30:00.000Z","ending":"complete","missingSamples":0,"samples":500},"header":{"breakId":1,"readingUnit":"counts","scale":{"kind":"uncalibrated-scale","nPerCount":0.01},"sessionId":1,"settings":{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null},"specimenId":1,"startedAt":"2031-05-02T09:30:00.000Z","tare":null}}','bb40e0038b9c4c6dd1472b6941abcb50a097b64b721dc37b0622417c37b3f082','2f9b4475492b0d2b6d183561e4c32be9de7280bc64733539ac85790df8a194b9');
INSERT INTO ledger VALUES(5,'2031-05-02T09:30:00.000Z','evaluation',1,'{"breakId":1,"evaluationId":1,"madeAt":"2031-05-02T09:30:00.000Z","method":"test 1","result":{"afterBreakN":null,"breakTimeS":null,"events":[{"cycles":null,"dropN":120,"dropPercent":5.5,"endTimeS":0.32,"kind":"pop-in","startTimeS":0.3}],"flags":["uncalibrated"],"loadingRateNPerS":100.25,"missingSamples":0,"noiseN":0.1,"onsetTimeS":0.1,"outcome":"break","peakN":6000,"peakTimeS":0.45,"sampleRateHz":1000,"samples":500,"samplingBoundN":0.1,"samplingBoundPercent":0.2},"scale":{"kind":"uncalibrated-scale","nPerCount":0.01},"settings":{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null},"tareOffset":0}','2f9b4475492b0d2b6d183561e4c32be9de7280bc64733539ac85790df8a194b9','c078fe54bc0fcf8ca2f10fa8ecce71b80b639421b397ee7c2dcb28c6cc078756');
INSERT INTO ledger VALUES(6,'2031-05-02T09:30:00.000Z','session',2,'{"lineFormat":"number","program":"breakledger 0.1.0","sessionId":2,"source":"virtual amplifier: brittle","startedAt":"2031-05-02T09:30:00.000Z"}','c078fe54bc0fcf8ca2f10fa8ecce71b80b639421b397ee7c2dcb28c6cc078756','f832d2f5680c19c68c6e5f4a432b67514edb873a0a974142f921f22f2833b51a');
INSERT INTO ledger VALUES(7,'2031-05-02T09:30:00.000Z','break',2,'{"end":{"breakId":2,"curveSha256":"6b425746af01b6733e5a6018ec0d2a1be1d90e67f3808fc9dae5b0ea0f8e728f","endedAt":"2031-05-02T09:30:00.000Z","ending":"complete","missingSamples":0,"samples":500},"header":{"breakId":2,"readingUnit":"counts","scale":{"kind":"uncalibrated-scale","nPerCount":0.01},"sessionId":2,"settings":{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null},"specimenId":2,"startedAt":"2031-05-02T09:30:00.000Z","tare":null}}','f832d2f5680c19c68c6e5f4a432b67514edb873a0a974142f921f22f2833b51a','7244e227aa3972c1ae24f9e5a4064103a8a4facae03409238ed8db075185574e');
INSERT INTO ledger VALUES(8,'2031-05-02T09:30:00.000Z','evaluation',2,'{"breakId":2,"evaluationId":2,"madeAt":"2031-05-02T09:30:00.000Z","method":"test 1","result":{"afterBreakN":null,"breakTimeS":null,"events":[{"cycles":4,"dropN":120,"dropPercent":5.5,"endTimeS":0.4,"kind":"stick-slip","startTimeS":0.1}],"flags":["uncalibrated"],"loadingRateNPerS":100.25,"missingSamples":0,"noiseN":0.1,"onsetTimeS":0.1,"outcome":"break","peakN":6000,"peakTimeS":0.45,"sampleRateHz":1000,"samples":500,"samplingBoundN":0.1,"samplingBoundPercent":0.2},"scale":{"kind":"uncalibrated-scale","nPerCount":0.01},"settings":{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null},"tareOffset":0}','7244e227aa3972c1ae24f9e5a4064103a8a4facae03409238ed8db075185574e','08411cdbac877a595e09db7183700574ce14ff93099d9d0bc7a92f4a156e7953');
INSERT INTO ledger VALUES(9,'2031-05-02T09:30:00.000Z','evaluation',3,'{"breakId":1,"evaluationId":3,"madeAt":"2031-05-02T09:30:00.000Z","method":"test 2","result":{"afterBreakN":null,"breakTimeS":null,"events":[],"flags":["uncalibrated"],"loadingRateNPerS":100.25,"missingSamples":0,"noiseN":0.1,"onsetTimeS":0.1,"outcome":"break","peakN":6000,"peakTimeS":0.45,"sampleRateHz":1000,"samples":500,"samplingBoundN":0.1,"samplingBoundPercent":0.2},"scale":{"kind":"uncalibrated-scale","nPerCount":0.01},"settings":{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null},"tareOffset":0}','08411cdbac877a595e09db7183700574ce14ff93099d9d0bc7a92f4a156e7953','e2757c4ad5d1745130301c4854f42802539f7ad0b7532d615b058d6c60027260');
INSERT INTO ledger VALUES(10,'2031-05-02T09:30:00.000Z','decision',1,'{"breakId":2,"by":"bench","decisionId":1,"kind":"set-aside","reason":"slipped","recordedAt":"2031-05-02T09:30:00.000Z","specimenId":null}','e2757c4ad5d1745130301c4854f42802539f7ad0b7532d615b058d6c60027260','67d4cd3100f774d7125bb04503aa7232ab637b09be217508d1de3b41c6f65a53');
INSERT INTO ledger VALUES(11,'2031-05-02T09:30:00.000Z','decision',2,'{"breakId":2,"by":"bench","decisionId":2,"kind":"taken-back","reason":"it had not","recordedAt":"2031-05-02T09:30:00.000Z","specimenId":null}','67d4cd3100f774d7125bb04503aa7232ab637b09be217508d1de3b41c6f65a53','ddb70bc2238499413c7d544abb94c46609b2ffa2e5eeaad519bef20f07701341');
INSERT INTO ledger VALUES(12,'2031-05-02T09:30:00.000Z','decision',3,'{"breakId":2,"by":"bench","decisionId":3,"kind":"reassigned","reason":"slipped","recordedAt":"2031-05-02T09:30:00.000Z","specimenId":1}','ddb70bc2238499413c7d544abb94c46609b2ffa2e5eeaad519bef20f07701341','7318035a6a2ecd3d5cd1a326ab1499c0d3924abb16075c0d8e52e8d5a0968fe2');
INSERT INTO ledger VALUES(13,'2031-05-02T09:30:00.000Z','decision',4,'{"breakId":2,"by":"bench","decisionId":4,"kind":"set-aside","reason":"wrong block after all","recordedAt":"2031-05-02T09:30:00.000Z","specimenId":null}','7318035a6a2ecd3d5cd1a326ab1499c0d3924abb16075c0d8e52e8d5a0968fe2','46bd07956c399b8762d563795277e8e8900b89ee0f5a8816becf79fb33b16d73');
INSERT INTO ledger VALUES(14,'2031-05-02T09:30:00.000Z','assessment',1,'{"assessmentId":1,"breakId":1,"by":"bench","failurePattern":"SF","note":"ü","recordedAt":"2031-05-02T09:30:00.000Z","woodFailurePercent":75}','46bd07956c399b8762d563795277e8e8900b89ee0f5a8816becf79fb33b16d73','00cf65471c42a6c8211216a72af9a6ad249827e31d55fa920253d888f0a032f1');
INSERT INTO ledger VALUES(15,'2031-05-02T09:30:00.000Z','specimen',3,'{"by":"bench","fields":{"adhesive":"casein C1","areaMm2":610.5,"bondLineGapMm":0,"demo":true,"exposure":"loft","gluedOn":"2031-03-01","jointType":"long grain to long grain","lot":"C1-2031-a","notes":"","number":"C1-LL-1","overlapLengthMm":30,"overlapWidthMm":20,"place":"shelf 2"},"reason":"measured again","recordedAt":"2031-05-02T09:30:00.000Z","revision":2,"specimenId":1}','00cf65471c42a6c8211216a72af9a6ad249827e31d55fa920253d888f0a032f1','dac58ad9dc655ede39d05ff5a64d8ccf1d5b5c375bfb20c8585a9b18150945b7');
INSERT INTO ledger VALUES(16,'2031-05-02T09:30:00.000Z','session',3,'{"lineFormat":"number","program":"breakledger 0.1.0","sessionId":3,"source":"virtual amplifier: brittle","startedAt":"2031-05-02T09:30:00.000Z"}','dac58ad9dc655ede39d05ff5a64d8ccf1d5b5c375bfb20c8585a9b18150945b7','752fe384aa430404cb20cb3f9a293fc06eb0ee7f58633b5be6d4b5c850dc28a9');
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
INSERT INTO specimen_revision VALUES(1,1,1,'2031-05-02T09:30:00.000Z','bench','','C1-LL-1','casein C1','C1-2031-a','long grain to long grain','loft',0.0,30.0,20.0,600.0,'2031-03-01','shelf 2','',1);
INSERT INTO specimen_revision VALUES(2,2,1,'2031-05-02T09:30:00.000Z','bench','','C1-LL-2','casein C1','C1-2031-a','long grain to long grain','loft',0.0,30.0,20.0,600.0,'2031-03-01','shelf 2','',1);
INSERT INTO specimen_revision VALUES(3,1,2,'2031-05-02T09:30:00.000Z','bench','measured again','C1-LL-1','casein C1','C1-2031-a','long grain to long grain','loft',0.0,30.0,20.0,610.5,'2031-03-01','shelf 2','',1);
CREATE TABLE capture_session (
  session_id  INTEGER PRIMARY KEY,
  started_at  TEXT NOT NULL,
  source      TEXT NOT NULL,
  line_format TEXT NOT NULL,
  program     TEXT NOT NULL
) STRICT;
INSERT INTO capture_session VALUES(1,'2031-05-02T09:30:00.000Z','virtual amplifier: brittle','number','breakledger 0.1.0');
INSERT INTO capture_session VALUES(2,'2031-05-02T09:30:00.000Z','virtual amplifier: brittle','number','breakledger 0.1.0');
INSERT INTO capture_session VALUES(3,'2031-05-02T09:30:00.000Z','virtual amplifier: brittle','number','breakledger 0.1.0');
CREATE TABLE rejected_line (
  rejected_line_id INTEGER PRIMARY KEY,
  session_id       INTEGER NOT NULL REFERENCES capture_session (session_id),
  recorded_at      TEXT NOT NULL,
  count            INTEGER NOT NULL CHECK (count > 0),
  example          BLOB
) STRICT;
INSERT INTO rejected_line VALUES(1,3,'2031-05-02T09:30:00.000Z',3,X'2121');
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
INSERT INTO break_header VALUES(1,1,1,'2031-05-02T09:30:00.000Z','counts','{"kind":"uncalibrated-scale","nPerCount":0.01}',NULL,'{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}');
INSERT INTO break_header VALUES(2,2,2,'2031-05-02T09:30:00.000Z','counts','{"kind":"uncalibrated-scale","nPerCount":0.01}',NULL,'{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}');
INSERT INTO break_header VALUES(3,3,NULL,'2031-05-02T09:30:00.000Z','counts','{"kind":"uncalibrated-scale","nPerCount":0.01}',NULL,'{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}');
CREATE TABLE break_end (
  break_id        INTEGER PRIMARY KEY REFERENCES break_header (break_id),
  ended_at        TEXT NOT NULL,
  ending          TEXT NOT NULL CHECK (ending IN ('complete', 'interrupted', 'recovered')),
  samples         INTEGER NOT NULL CHECK (samples >= 0),
  missing_samples INTEGER NOT NULL CHECK (missing_samples >= 0),
  curve_sha256    TEXT NOT NULL CHECK (length(curve_sha256) = 64)
) STRICT;
INSERT INTO break_end VALUES(1,'2031-05-02T09:30:00.000Z','complete',500,0,'6b425746af01b6733e5a6018ec0d2a1be1d90e67f3808fc9dae5b0ea0f8e728f');
INSERT INTO break_end VALUES(2,'2031-05-02T09:30:00.000Z','complete',500,0,'6b425746af01b6733e5a6018ec0d2a1be1d90e67f3808fc9dae5b0ea0f8e728f');
CREATE TABLE curve_block (
  break_id       INTEGER NOT NULL REFERENCES break_header (break_id),
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
  sha256         TEXT NOT NULL CHECK (length(sha256) = 64),
  PRIMARY KEY (break_id, block)
) STRICT;
INSERT INTO curve_block VALUES(1,0,500,0,499000,1000,X'0000000000000000','decimal',0,2,0,1333,X'02188661188661188661188661188661180286611886611886611886611886611886026118866118866118866118866118866102188661188661188661188661188661180286611886611886611886611886611886026118866118866118866118866118866102188661188661188661188661188661181502002000000c6749c027390600c8000000001803006400600c009001000000300600c8000000001803006400600c009001000000300600c8000000001803006400600c009001000000300600c800c018002003000000600c009001000000300600c800c018002003000000600c009001000000300600c800c018002003000000600c00900100','69a4a65c503be0cd3d91e053019b4b0459fd1f08dcfb3e79a45e41577d76ec04');
INSERT INTO curve_block VALUES(2,0,500,0,499000,1000,X'0000000000000000','decimal',0,2,0,1333,X'02188661188661188661188661188661180286611886611886611886611886611886026118866118866118866118866118866102188661188661188661188661188661180286611886611886611886611886611886026118866118866118866118866118866102188661188661188661188661188661181502002000000c6749c027390600c8000000001803006400600c009001000000300600c8000000001803006400600c009001000000300600c8000000001803006400600c009001000000300600c800c018002003000000600c009001000000300600c800c018002003000000600c009001000000300600c800c018002003000000600c00900100','69a4a65c503be0cd3d91e053019b4b0459fd1f08dcfb3e79a45e41577d76ec04');
CREATE TABLE running_block (
  break_id       INTEGER NOT NULL REFERENCES break_header (break_id),
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
  sha256         TEXT NOT NULL CHECK (length(sha256) = 64),
  PRIMARY KEY (break_id, block)
) STRICT;
INSERT INTO running_block VALUES(3,0,10,0,9000,1000,X'00','decimal',0,2,0,11,X'02000600','90a468e8d73abef53ac406bf37b0ef1e650701c9f543d1b461cf151f5109e353');
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
INSERT INTO evaluation VALUES(1,1,'2031-05-02T09:30:00.000Z','test 1','{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}','{"kind":"uncalibrated-scale","nPerCount":0.01}',0.0,'break',6000.0,0.4500000000000000111,0.10000000000000000555,NULL,1000.0,500,0,0.10000000000000000555,100.25,0.10000000000000000555,0.2000000000000000111,NULL,'["uncalibrated"]','[{"cycles":null,"dropN":120,"dropPercent":5.5,"endTimeS":0.32,"kind":"pop-in","startTimeS":0.3}]');
INSERT INTO evaluation VALUES(2,2,'2031-05-02T09:30:00.000Z','test 1','{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}','{"kind":"uncalibrated-scale","nPerCount":0.01}',0.0,'break',6000.0,0.4500000000000000111,0.10000000000000000555,NULL,1000.0,500,0,0.10000000000000000555,100.25,0.10000000000000000555,0.2000000000000000111,NULL,'["uncalibrated"]','[{"cycles":4,"dropN":120,"dropPercent":5.5,"endTimeS":0.4,"kind":"stick-slip","startTimeS":0.1}]');
INSERT INTO evaluation VALUES(3,1,'2031-05-02T09:30:00.000Z','test 2','{"breakDropShare":0.4,"breakDropWithinS":0.25,"capacityN":null,"endCodes":null,"endHoldS":1,"endShare":0.05,"postBreakS":0.5,"preTriggerS":1,"settlingTimeS":0,"startCapacityShare":0.002,"startHoldS":0.05,"startNoiseMultiple":5,"startThresholdN":null}','{"kind":"uncalibrated-scale","nPerCount":0.01}',0.0,'break',6000.0,0.4500000000000000111,0.10000000000000000555,NULL,1000.0,500,0,0.10000000000000000555,100.25,0.10000000000000000555,0.2000000000000000111,NULL,'["uncalibrated"]','[]');
CREATE TABLE assessment (
  assessment_id        INTEGER PRIMARY KEY,
  break_id             INTEGER NOT NULL REFERENCES break_header (break_id),
  recorded_at          TEXT NOT NULL,
  by                   TEXT NOT NULL,
  wood_failure_percent REAL CHECK (wood_failure_percent BETWEEN 0 AND 100),
  failure_pattern      TEXT,
  note                 TEXT NOT NULL
) STRICT;
INSERT INTO assessment VALUES(1,1,'2031-05-02T09:30:00.000Z','bench',75.0,'SF','ü');
CREATE TABLE decision (
  decision_id INTEGER PRIMARY KEY,
  break_id    INTEGER NOT NULL REFERENCES break_header (break_id),
  recorded_at TEXT NOT NULL,
  by          TEXT NOT NULL CHECK (by <> ''),
  reason      TEXT NOT NULL CHECK (reason <> ''),
  kind        TEXT NOT NULL CHECK (kind IN ('set-aside', 'taken-back', 'reassigned')),
  specimen_id INTEGER
) STRICT;
INSERT INTO decision VALUES(1,2,'2031-05-02T09:30:00.000Z','bench','slipped','set-aside',NULL);
INSERT INTO decision VALUES(2,2,'2031-05-02T09:30:00.000Z','bench','it had not','taken-back',NULL);
INSERT INTO decision VALUES(3,2,'2031-05-02T09:30:00.000Z','bench','slipped','reassigned',1);
INSERT INTO decision VALUES(4,2,'2031-05-02T09:30:00.000Z','bench','wrong block after all','set-aside',NULL);
CREATE TABLE preference (
  name  TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT;
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
INSERT INTO break_current VALUES(1,'2031-05-02T09:30:00.000Z',1,3,1,NULL,'break',6000.0,75.0,'u');
INSERT INTO break_current VALUES(2,'2031-05-02T09:30:00.000Z',1,2,NULL,'wrong block after all','break',6000.0,NULL,'');
INSERT INTO break_current VALUES(3,'2031-05-02T09:30:00.000Z',NULL,NULL,NULL,NULL,NULL,NULL,NULL,'');
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
INSERT INTO specimen_current VALUES(1,3,'c1-ll-1','c0011-ll-0011','casein c0011','long grain to long grain','loft',610.5,replace('c1-ll-1\ncasein c1\nlong grain to long grain\nloft\nshelf 2\n','\n',char(10)),1,1,1,'2031-05-02T09:30:00.000Z',6000.0,75.0);
INSERT INTO specimen_current VALUES(2,2,'c1-ll-2','c0011-ll-0012','casein c0011','long grain to long grain','loft',600.0,replace('c1-ll-2\ncasein c1\nlong grain to long grain\nloft\nshelf 2\n','\n',char(10)),1,NULL,0,NULL,NULL,NULL);
CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger
BEGIN SELECT RAISE(ABORT, 'ledger is append-only: a record is never changed'); END;
CREATE TRIGGER ledger_is_never_removed BEFORE DELETE ON ledger
BEGIN SELECT RAISE(ABORT, 'ledger is append-only: a record is never removed'); END;
CREATE TRIGGER ledger_is_never_replaced BEFORE INSERT ON ledger
WHEN EXISTS (SELECT 1 FROM ledger WHERE seq = NEW.seq OR (kind = NEW.kind AND record_id = NEW.record_id))
BEGIN SELECT RAISE(ABORT, 'ledger is append-only: a record is never replaced'); END;
CREATE TRIGGER specimen_revision_is_never_changed BEFORE UPDATE ON specimen_revision
BEGIN SELECT RAISE(ABORT, 'specimen_revision is append-only: a record is never changed'); END;
CREATE TRIGGER specimen_revision_is_never_removed BEFORE DELETE ON specimen_revision
BEGIN SELECT RAISE(ABORT, 'specimen_revision is append-only: a record is never removed'); END;
CREATE TRIGGER specimen_revision_is_never_replaced BEFORE INSERT ON specimen_revision
WHEN EXISTS (SELECT 1 FROM specimen_revision WHERE revision_id = NEW.revision_id OR (specimen_id = NEW.specimen_id AND revision = NEW.revision))
BEGIN SELECT RAISE(ABORT, 'specimen_revision is append-only: a record is never replaced'); END;
CREATE TRIGGER capture_session_is_never_changed BEFORE UPDATE ON capture_session
BEGIN SELECT RAISE(ABORT, 'capture_session is append-only: a record is never changed'); END;
CREATE TRIGGER capture_session_is_never_removed BEFORE DELETE ON capture_session
BEGIN SELECT RAISE(ABORT, 'capture_session is append-only: a record is never removed'); END;
CREATE TRIGGER capture_session_is_never_replaced BEFORE INSERT ON capture_session
WHEN EXISTS (SELECT 1 FROM capture_session WHERE session_id = NEW.session_id)
BEGIN SELECT RAISE(ABORT, 'capture_session is append-only: a record is never replaced'); END;
CREATE INDEX rejected_line_of_session ON rejected_line (session_id);
CREATE TRIGGER rejected_line_is_never_changed BEFORE UPDATE ON rejected_line
BEGIN SELECT RAISE(ABORT, 'rejected_line is append-only: a record is never changed'); END;
CREATE TRIGGER rejected_line_is_never_removed BEFORE DELETE ON rejected_line
BEGIN SELECT RAISE(ABORT, 'rejected_line is append-only: a record is never removed'); END;
CREATE TRIGGER rejected_line_is_never_replaced BEFORE INSERT ON rejected_line
WHEN EXISTS (SELECT 1 FROM rejected_line WHERE rejected_line_id = NEW.rejected_line_id)
BEGIN SELECT RAISE(ABORT, 'rejected_line is append-only: a record is never replaced'); END;
CREATE TRIGGER break_header_is_never_changed BEFORE UPDATE ON break_header
BEGIN SELECT RAISE(ABORT, 'break_header is append-only: a record is never changed'); END;
CREATE TRIGGER break_header_is_never_removed BEFORE DELETE ON break_header
BEGIN SELECT RAISE(ABORT, 'break_header is append-only: a record is never removed'); END;
CREATE TRIGGER break_header_is_never_replaced BEFORE INSERT ON break_header
WHEN EXISTS (SELECT 1 FROM break_header WHERE break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'break_header is append-only: a record is never replaced'); END;
CREATE TRIGGER break_end_is_never_changed BEFORE UPDATE ON break_end
BEGIN SELECT RAISE(ABORT, 'break_end is append-only: a record is never changed'); END;
CREATE TRIGGER break_end_is_never_removed BEFORE DELETE ON break_end
BEGIN SELECT RAISE(ABORT, 'break_end is append-only: a record is never removed'); END;
CREATE TRIGGER break_end_is_never_replaced BEFORE INSERT ON break_end
WHEN EXISTS (SELECT 1 FROM break_end WHERE break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'break_end is append-only: a record is never replaced'); END;
CREATE TRIGGER curve_block_is_never_changed BEFORE UPDATE ON curve_block
BEGIN SELECT RAISE(ABORT, 'curve_block is append-only: a record is never changed'); END;
CREATE TRIGGER curve_block_is_never_removed BEFORE DELETE ON curve_block
BEGIN SELECT RAISE(ABORT, 'curve_block is append-only: a record is never removed'); END;
CREATE TRIGGER curve_block_is_never_replaced BEFORE INSERT ON curve_block
WHEN EXISTS (SELECT 1 FROM curve_block WHERE break_id = NEW.break_id AND block = NEW.block)
BEGIN SELECT RAISE(ABORT, 'curve_block is append-only: a record is never replaced'); END;
CREATE TRIGGER curve_block_is_sealed BEFORE INSERT ON curve_block
WHEN EXISTS (SELECT 1 FROM break_end WHERE break_id = NEW.break_id)
BEGIN SELECT RAISE(ABORT, 'curve_block is append-only: the curve of a finished break takes no more samples'); END;
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
CREATE INDEX evaluation_of_break ON evaluation (break_id, evaluation_id);
CREATE TRIGGER evaluation_is_never_changed BEFORE UPDATE ON evaluation
BEGIN SELECT RAISE(ABORT, 'evaluation is append-only: a record is never changed'); END;
CREATE TRIGGER evaluation_is_never_removed BEFORE DELETE ON evaluation
BEGIN SELECT RAISE(ABORT, 'evaluation is append-only: a record is never removed'); END;
CREATE TRIGGER evaluation_is_never_replaced BEFORE INSERT ON evaluation
WHEN EXISTS (SELECT 1 FROM evaluation WHERE evaluation_id = NEW.evaluation_id)
BEGIN SELECT RAISE(ABORT, 'evaluation is append-only: a record is never replaced'); END;
CREATE INDEX assessment_of_break ON assessment (break_id, assessment_id);
CREATE TRIGGER assessment_is_never_changed BEFORE UPDATE ON assessment
BEGIN SELECT RAISE(ABORT, 'assessment is append-only: a record is never changed'); END;
CREATE TRIGGER assessment_is_never_removed BEFORE DELETE ON assessment
BEGIN SELECT RAISE(ABORT, 'assessment is append-only: a record is never removed'); END;
CREATE TRIGGER assessment_is_never_replaced BEFORE INSERT ON assessment
WHEN EXISTS (SELECT 1 FROM assessment WHERE assessment_id = NEW.assessment_id)
BEGIN SELECT RAISE(ABORT, 'assessment is append-only: a record is never replaced'); END;
CREATE INDEX decision_of_break ON decision (break_id, decision_id);
CREATE TRIGGER decision_is_never_changed BEFORE UPDATE ON decision
BEGIN SELECT RAISE(ABORT, 'decision is append-only: a record is never changed'); END;
CREATE TRIGGER decision_is_never_removed BEFORE DELETE ON decision
BEGIN SELECT RAISE(ABORT, 'decision is append-only: a record is never removed'); END;
CREATE TRIGGER decision_is_never_replaced BEFORE INSERT ON decision
WHEN EXISTS (SELECT 1 FROM decision WHERE decision_id = NEW.decision_id)
BEGIN SELECT RAISE(ABORT, 'decision is append-only: a record is never replaced'); END;
CREATE INDEX break_current_of_specimen ON break_current (specimen_id, break_id);
CREATE INDEX specimen_current_by_number ON specimen_current (number_key, specimen_id);
CREATE INDEX specimen_current_waiting ON specimen_current (number_key, specimen_id) WHERE break_in_force IS NULL;
COMMIT;
