import type Database from 'better-sqlite3'
import { readSession } from '../bench/sessions.ts'
import { assessmentContent } from '../breaks/assessments.ts'
import { breakContent } from '../breaks/breakHeaders.ts'
import { decisionContent } from '../breaks/decisions.ts'
import { evaluationContent } from '../breaks/evaluations.ts'
import { calibrationDecisionContent } from '../calibration/calibrationDecisions.ts'
import { routineContent, routineEndContent, routineReadingContent } from '../calibration/calibrationRoutines.ts'
import { calibrationContent } from '../calibration/calibrations.ts'
import { checkWeightContent } from '../calibration/checkWeights.ts'
import { weightSetContent } from '../calibration/weightSets.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import type { Report } from '../core/fault.ts'
import { firstPreviousHash, type LedgerKind, type LedgerRow, ledgerHash } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import {
  reevaluationContent,
  reevaluationDecisionContent,
  reevaluationEndContent,
} from '../reevaluation/reevaluations.ts'
import { specimenContent } from '../specimens/specimens.ts'

type RecordKind = {
  /** All ids that must stand in the ledger. */
  ids: string
  content(database: Database.Database, id: number): unknown
}

const recordKinds: Readonly<Record<LedgerKind, RecordKind>> = {
  specimen: { ids: 'SELECT revision_id AS id FROM specimen_revision', content: specimenContent },
  session: { ids: 'SELECT session_id AS id FROM capture_session', content: readSession },
  break: { ids: 'SELECT break_id AS id FROM break_end', content: breakContent },
  evaluation: { ids: 'SELECT evaluation_id AS id FROM evaluation', content: evaluationContent },
  assessment: { ids: 'SELECT assessment_id AS id FROM assessment', content: assessmentContent },
  decision: { ids: 'SELECT decision_id AS id FROM decision', content: decisionContent },
  weights: { ids: 'SELECT weight_set_id AS id FROM weight_set', content: weightSetContent },
  'calibration-routine': { ids: 'SELECT routine_id AS id FROM calibration_routine', content: routineContent },
  'calibration-reading': { ids: 'SELECT reading_id AS id FROM calibration_reading', content: routineReadingContent },
  'calibration-routine-end': {
    ids: 'SELECT routine_id AS id FROM calibration_routine_end',
    content: routineEndContent,
  },
  calibration: { ids: 'SELECT calibration_id AS id FROM calibration', content: calibrationContent },
  'calibration-decision': {
    ids: 'SELECT calibration_decision_id AS id FROM calibration_decision',
    content: calibrationDecisionContent,
  },
  'check-weight': { ids: 'SELECT check_id AS id FROM check_weight', content: checkWeightContent },
  reevaluation: { ids: 'SELECT reevaluation_id AS id FROM reevaluation', content: reevaluationContent },
  'reevaluation-end': { ids: 'SELECT reevaluation_id AS id FROM reevaluation_end', content: reevaluationEndContent },
  'reevaluation-decision': {
    ids: 'SELECT reevaluation_decision_id AS id FROM reevaluation_decision',
    content: reevaluationDecisionContent,
  },
}

/** Walks the chain and compares each entry with its record and each record with its entry; returns how many entries there are. */
export function verifyLedger(database: Database.Database, report: Report): number {
  let entries = 0
  let previousSeq = 0
  let previousHash = firstPreviousHash
  for (const entry of database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').iterate()) {
    const where = `ledger entry ${entry.seq} (${entry.kind} ${entry.record_id})`
    if (entry.seq !== previousSeq + 1)
      report({ where, what: `the entries between ${previousSeq} and ${entry.seq} are gone` })
    if (entry.previous_hash !== previousHash)
      report({ where, what: 'its previous hash is not the hash of the entry before it' })
    if (ledgerHash(entry) !== entry.hash) report({ where, what: 'its content does not match its hash' })
    const difference = differenceFromRecord(database, entry)
    if (difference !== null) report({ where, what: difference })
    entries += 1
    previousSeq = entry.seq
    previousHash = entry.hash
  }
  for (const [kind, { ids }] of Object.entries(recordKinds)) {
    const missing = prepared<{ id: number }>(
      database,
      `SELECT id FROM (${ids}) WHERE id NOT IN (SELECT record_id FROM ledger WHERE kind = ?) ORDER BY id`,
    ).all(kind)
    for (const { id } of missing) report({ where: `${kind} ${id}`, what: 'the record has no entry in the ledger' })
  }
  return entries
}

function differenceFromRecord(database: Database.Database, entry: LedgerRow): string | null {
  // Any word may stand there: the table of an older or damaged archive does not know which kinds there are.
  if (!Object.hasOwn(recordKinds, entry.kind)) return `no record is called "${entry.kind}"`
  let record: unknown
  try {
    record = recordKinds[entry.kind].content(database, entry.record_id)
  } catch (thrown) {
    return `its record cannot be read: ${thrown instanceof Error ? thrown.message : String(thrown)}`
  }
  return canonicalJson(record) === entry.content ? null : 'the record differs from what the ledger holds of it'
}
