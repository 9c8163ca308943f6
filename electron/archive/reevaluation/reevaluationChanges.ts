import type { Outcome } from '#contract/breaks/evaluation.ts'
import type { ChangesPage, ChangesQuery, ResultChange } from '#contract/reevaluation/changes.ts'
import { changeFigures, type ResultPair, resultPair } from '#domain/strength/resultChange.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { isSimulated } from '../lists/simulated.ts'
import { type OverruledRow, overruledColumns, overruledFromRow } from '../lists/summaries.ts'
import { readReevaluation } from './reevaluations.ts'

type PairRow = {
  break_id: number
  number: string | null
  adhesive: string | null
  number_key: string | null
  set_aside: string | null
  set_aside_cause: ResultChange['setAsideCause']
  simulated: number
  before_id: number
  before_method: string
  before_outcome: Outcome
  before_peak_n: number | null
  before_flags: string
  before_events: string
  now_id: number
  now_method: string
  now_outcome: Outcome
  now_peak_n: number | null
  now_flags: string
  now_events: string
} & OverruledRow

type KeyedChange = { change: ResultChange; numberKey: string | null }

const pairsText = `
  SELECT n.break_id, r.number, r.adhesive, s.number_key, d.set_aside, d.set_aside_cause, (${isSimulated} OR coalesce(s.demo, 0)) AS simulated, ${overruledColumns},
    b.evaluation_id AS before_id, b.method AS before_method, b.outcome AS before_outcome, b.peak_n AS before_peak_n,
    b.flags AS before_flags, b.events AS before_events,
    n.evaluation_id AS now_id, n.method AS now_method, n.outcome AS now_outcome, n.peak_n AS now_peak_n,
    n.flags AS now_flags, n.events AS now_events
  FROM evaluation n
  JOIN evaluation b ON b.evaluation_id = n.beside_id
  JOIN break_header h ON h.break_id = n.break_id
  JOIN capture_session c ON c.session_id = h.session_id
  LEFT JOIN break_current d ON d.break_id = n.break_id
  LEFT JOIN evaluation e ON e.evaluation_id = d.evaluation_id
  LEFT JOIN decision p ON p.decision_id = d.peak_decision_id
  LEFT JOIN specimen_current s ON s.specimen_id = d.specimen_id
  LEFT JOIN specimen_revision r ON r.revision_id = s.revision_id
  WHERE n.reevaluation_id = ?`

// A result once stored never changes, nor what it stands beside; they are compared once for each connection.
const compared = new WeakMap<Database, Map<number, Map<number, ResultPair>>>()

/** One page of what a re-evaluation changed, and figures over all of it. */
export function reevaluationChanges(database: Database, query: ChangesQuery): ChangesPage {
  const { reevaluationId } = query
  readReevaluation(database, reevaluationId)
  const all = changesOf(database, reevaluationId)
  const wanted = all.filter(({ change }) => fits(change, query.only)).sort(order(query))
  return {
    total: wanted.length,
    rows: wanted.slice(query.offset, query.offset + query.limit).map(({ change }) => change),
    figures: changeFigures(all.map(({ change }) => change)),
  }
}

function changesOf(database: Database, reevaluationId: number): KeyedChange[] {
  const ofDatabase = compared.get(database) ?? new Map<number, Map<number, ResultPair>>()
  compared.set(database, ofDatabase)
  const known = ofDatabase.get(reevaluationId) ?? new Map<number, ResultPair>()
  const changes = prepared<PairRow>(database, pairsText)
    .all(reevaluationId)
    .map((row) => {
      const pair = known.get(row.break_id) ?? pairOf(row)
      known.set(row.break_id, pair)
      // The names of a block may be corrected at any time, and a person's word may come and go.
      const change: ResultChange = {
        breakId: row.break_id,
        number: row.number,
        adhesive: row.adhesive,
        overruled: overruledFromRow(row),
        setAside: row.set_aside,
        setAsideCause: row.set_aside_cause,
        simulated: row.simulated === 1,
        ...pair,
      }
      return { change, numberKey: row.number_key }
    })
  // One at a time is looked at; the ones before it need not be kept.
  ofDatabase.clear()
  ofDatabase.set(reevaluationId, known)
  return changes
}

function pairOf(row: PairRow): ResultPair {
  return resultPair(
    {
      evaluationId: row.before_id,
      method: row.before_method,
      outcome: row.before_outcome,
      peakN: row.before_peak_n,
      flags: JSON.parse(row.before_flags),
      events: JSON.parse(row.before_events),
    },
    {
      evaluationId: row.now_id,
      method: row.now_method,
      outcome: row.now_outcome,
      peakN: row.now_peak_n,
      flags: JSON.parse(row.now_flags),
      events: JSON.parse(row.now_events),
    },
  )
}

function fits({ changed }: ResultChange, only: ChangesQuery['only']): boolean {
  if (only === 'all') return true
  if (only === 'changed') return changed.outcome || changed.peak || changed.flags || changed.events
  return changed[only]
}

/** By number in natural order, or by the size of the difference in percent; what has none comes last either way. */
function order({ sort, descending }: ChangesQuery) {
  const sign = descending ? -1 : 1
  const size = ({ change }: KeyedChange) =>
    change.differencePercent === null ? null : Math.abs(change.differencePercent)
  const byNumber = (a: KeyedChange, b: KeyedChange) =>
    compare(a.numberKey, b.numberKey, sign) || sign * (a.change.breakId - b.change.breakId)
  if (sort === 'number') return byNumber
  return (a: KeyedChange, b: KeyedChange) => compare(size(a), size(b), sign) || byNumber(a, b)
}

function compare<Value extends string | number>(a: Value | null, b: Value | null, sign: number): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null)
  return a === b ? 0 : a < b ? -sign : sign
}
