import type Database from 'better-sqlite3'
import { reads, writes } from '#archive/methods.ts'
import {
  beginReevaluation,
  decideReevaluation,
  endReevaluation,
  type NewReevaluationDecision,
} from '#archive/reevaluation/reevaluations.ts'
import type { EvaluationResult, NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { morning } from './storedStudy.ts'

/** What a re-evaluation lays beside the result in force of a break: the same, but for what is given. */
export function resultBeside(
  database: Database.Database,
  breakId: number,
  change: Partial<EvaluationResult> = {},
  scale?: ForceScale,
): NewEvaluation {
  const { evaluations, inForceId, header } = reads.break(database, breakId)
  const {
    evaluationId,
    result,
    reevaluationId: _of,
    ...before
  } = evaluations.find((one) => one.evaluationId === inForceId)!
  const under = scale ?? before.scale
  const peakReading = result.peakN === null ? null : result.peakN / 0.01
  const peakN = peakReading === null ? null : (forceOfReading(under, header.readingUnit)?.(peakReading) ?? null)
  return {
    ...before,
    scale: under,
    method: 'test 9',
    result: { ...result, peakN, ...change },
    besideId: evaluationId,
  }
}

/** Stores a whole re-evaluation of some breaks, decided on if wanted; returns its number. */
export function storeReevaluation(
  database: Database.Database,
  breakIds: number[],
  decision: Pick<NewReevaluationDecision, 'kind'> | null,
  made: (breakId: number) => NewEvaluation = (breakId) => resultBeside(database, breakId),
): number {
  const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {}, breakIds }
  const { reevaluationId } = beginReevaluation(database, begun)
  writes.addReevaluated(
    database,
    reevaluationId,
    breakIds.map((breakId) => made(breakId)),
  )
  endReevaluation(database, { reevaluationId, endedAt: morning, ending: 'complete', problems: [] })
  if (decision !== null) decide(database, reevaluationId, decision.kind)
  return reevaluationId
}

/** A person's word on a re-evaluation. */
export function decide(database: Database.Database, reevaluationId: number, kind: NewReevaluationDecision['kind']) {
  return decideReevaluation(database, { reevaluationId, kind, recordedAt: morning, by: 'bench', reason: 'compared' })
}
