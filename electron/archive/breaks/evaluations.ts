import type Database from 'better-sqlite3'
import { type Evaluation, evaluation, type NewEvaluation } from '#contract/breaks/evaluation.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { appendLedger } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { refreshBreak } from '../lists/current.ts'
import { readHeader } from './breakHeaders.ts'

type EvaluationRow = {
  evaluation_id: number
  break_id: number
  made_at: string
  method: string
  settings: string
  scale: string
  tare_offset: number
  outcome: string
  peak_n: number | null
  peak_time_s: number | null
  onset_time_s: number | null
  break_time_s: number | null
  sample_rate_hz: number | null
  samples: number
  missing_samples: number
  noise_n: number | null
  loading_rate_n_per_s: number | null
  sampling_bound_n: number | null
  sampling_bound_percent: number | null
  after_break_n: number | null
  flags: string
  events: string
  course: string | null
  reevaluation_id: number | null
  beside_id: number | null
}

/** What the ledger holds of an evaluation: just what is stored, with no default that a later version of the program would add. */
export function evaluationContent(database: Database.Database, evaluationId: number): unknown {
  const row = prepared<EvaluationRow>(database, 'SELECT * FROM evaluation WHERE evaluation_id = ?').get(evaluationId)
  if (row === undefined) throw notFound('evaluation', evaluationId)
  return plainEvaluation(row)
}

function plainEvaluation(row: EvaluationRow) {
  return {
    evaluationId: row.evaluation_id,
    breakId: row.break_id,
    madeAt: row.made_at,
    method: row.method,
    settings: JSON.parse(row.settings),
    scale: JSON.parse(row.scale),
    tareOffset: row.tare_offset,
    result: {
      outcome: row.outcome,
      peakN: row.peak_n,
      peakTimeS: row.peak_time_s,
      onsetTimeS: row.onset_time_s,
      breakTimeS: row.break_time_s,
      sampleRateHz: row.sample_rate_hz,
      samples: row.samples,
      missingSamples: row.missing_samples,
      noiseN: row.noise_n,
      loadingRateNPerS: row.loading_rate_n_per_s,
      samplingBoundN: row.sampling_bound_n,
      samplingBoundPercent: row.sampling_bound_percent,
      afterBreakN: row.after_break_n,
      flags: JSON.parse(row.flags),
      events: JSON.parse(row.events),
      // Absent where there is none, so that the ledger holds older results as they were written.
      ...(row.course === null ? {} : { course: JSON.parse(row.course) }),
    },
    ...(row.reevaluation_id === null ? {} : { reevaluationId: row.reevaluation_id }),
    ...(row.beside_id === null ? {} : { besideId: row.beside_id }),
  }
}

/** Stores an evaluation and enters it in the ledger; returns its number. Call it inside a transaction. */
export function storeEvaluation(database: Database.Database, made: NewEvaluation): number {
  const { lastInsertRowid } = prepared(
    database,
    `INSERT INTO evaluation (break_id, made_at, method, settings, scale, tare_offset, outcome, peak_n, peak_time_s,
       onset_time_s, break_time_s, sample_rate_hz, samples, missing_samples, noise_n, loading_rate_n_per_s,
       sampling_bound_n, sampling_bound_percent, after_break_n, flags, events, course, reevaluation_id, beside_id)
     VALUES (@breakId, @madeAt, @method, @settings, @scale, @tareOffset, @outcome, @peakN, @peakTimeS,
       @onsetTimeS, @breakTimeS, @sampleRateHz, @samples, @missingSamples, @noiseN, @loadingRateNPerS,
       @samplingBoundN, @samplingBoundPercent, @afterBreakN, @flags, @events, @course, @reevaluationId, @besideId)`,
  ).run({
    ...made.result,
    breakId: made.breakId,
    madeAt: made.madeAt,
    method: made.method,
    settings: canonicalJson(made.settings),
    scale: canonicalJson(made.scale),
    tareOffset: made.tareOffset,
    flags: canonicalJson(made.result.flags),
    events: canonicalJson(made.result.events),
    course: (made.result.course ?? null) === null ? null : canonicalJson(made.result.course),
    reevaluationId: made.reevaluationId ?? null,
    besideId: made.besideId ?? null,
  })
  const evaluationId = Number(lastInsertRowid)
  appendLedger(database, 'evaluation', evaluationId, made.madeAt, evaluationContent(database, evaluationId))
  return evaluationId
}

/** One evaluation. */
export function readEvaluation(database: Database.Database, evaluationId: number): Evaluation {
  return evaluation.parse(evaluationContent(database, evaluationId))
}

/** Lays an evaluation beside the older ones of its break; it is in force from now on. Those of a re-evaluation go another way. */
export function addEvaluation(database: Database.Database, made: NewEvaluation): Evaluation {
  if ((made.reevaluationId ?? null) !== null) throw new RangeError('addEvaluation takes no result of a re-evaluation')
  return database
    .transaction(() => {
      readHeader(database, made.breakId)
      const evaluationId = storeEvaluation(database, made)
      refreshBreak(database, made.breakId)
      return readEvaluation(database, evaluationId)
    })
    .immediate()
}

/** Every evaluation of a break, newest last. */
export function evaluationsOf(database: Database.Database, breakId: number): Evaluation[] {
  return prepared<EvaluationRow>(database, 'SELECT * FROM evaluation WHERE break_id = ? ORDER BY evaluation_id')
    .all(breakId)
    .map((row) => evaluation.parse(plainEvaluation(row)))
}
