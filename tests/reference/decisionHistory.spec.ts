import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginBreak } from '#archive/breaks/breaks.ts'
import { addDecision } from '#archive/breaks/decisions.ts'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import type { LedgerRow } from '#archive/core/ledger.ts'
import { breakIds, listBreaks } from '#archive/lists/lists.ts'
import { writes } from '#archive/methods.ts'
import { beginReevaluation, endReevaluation } from '#archive/reevaluation/reevaluations.ts'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import { listQuery } from '#contract/listQuery.ts'
import { decide } from '../archive/storedReevaluation.ts'
import {
  archiveInMemory,
  evaluationOf,
  header,
  morning,
  rampAndFall,
  specimenFields,
  storeBreak,
} from '../archive/storedStudy.ts'
import { standingBreaks } from './decisionHistory.ts'

// Histories of decisions drawn at random, and what the program shows after each against what the ledger says.

const curve = rampAndFall(60, 600_000)
const scales: ForceScale[] = [
  { kind: 'uncalibrated-scale', nPerCount: 0.01 },
  { kind: 'uncalibrated-scale', nPerCount: -0.02 },
  { kind: 'none' },
]
const numbers = ['A-1', 'A-2', 'A-10']

/** Park and Miller's generator (1988, multiplier 48271). */
function createRandom(seed: number) {
  let state = seed
  const below = (count: number) => {
    state = (state * 48_271) % 2_147_483_647
    return Math.floor((state / 2_147_483_647) * count)
  }
  return { below, pick: <One>(list: readonly One[]): One => list[below(list.length)]! }
}

/** An archive with three specimens, and the deeds that may be done in it. */
function study(seed: number) {
  const database = archiveInMemory()
  const { below, pick } = createRandom(seed)
  addSpecimens(
    database,
    numbers.map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  const ended: number[] = [storeBreak(database, 1, curve)]
  const running = new Map<number, number[]>()
  const decidable: number[] = []

  function result(breakId: number): NewEvaluation {
    const scale = pick(scales)
    const tareOffset = below(3) * 1.25
    const sample = below(curve.timeUs.length)
    const outcome = pick(['break', 'break', 'unloading', 'none'] as const)
    const found = scale.kind === 'uncalibrated-scale' && outcome !== 'none'
    const peakN = found ? curve.readings[sample]! * scale.nPerCount - tareOffset : null
    const peakTimeS = outcome === 'none' ? null : curve.timeUs[sample]! / 1e6
    return { ...evaluationOf(curve, { outcome, peakN, peakTimeS }), scale, tareOffset, breakId }
  }
  function word(kind: Parameters<typeof addDecision>[1]['kind']) {
    const sample = below(curve.timeUs.length)
    const overrules = kind === 'peak-picked' || kind === 'premature-failure'
    addDecision(database, {
      ...{ breakId: pick(ended), kind, recordedAt: morning, by: 'bench', reason: `reason ${below(1000)}` },
      specimenId: kind === 'reassigned' ? pick([null, 1, 2, 3]) : null,
      sample: overrules ? { timeS: curve.timeUs[sample]! / 1e6, reading: curve.readings[sample]! } : null,
    })
  }
  const inForceNow = (breakId: number) =>
    database.prepare('SELECT evaluation_id FROM break_current WHERE break_id = ?').pluck().get(breakId) as number
  const deeds = {
    capture: () => void ended.push(storeBreak(database, pick([null, 1, 2, 3]), curve)),
    evaluate: () => void addEvaluation(database, result(pick(ended))),
    overrule: () => word(pick(['peak-picked', 'premature-failure', 'peak-as-found'])),
    use: () => word(pick(['set-aside', 'taken-back', 'reassigned'])),
    begin() {
      const wanted = ended.filter(() => below(2) === 0)
      if (wanted.length === 0) return
      const begun = { begunAt: morning, by: 'bench', method: 'test 9', calibrationId: null, settings: {} }
      running.set(beginReevaluation(database, { ...begun, breakIds: wanted }).reevaluationId, wanted)
    },
    add() {
      const [one] = [...running].slice(below(running.size))
      const batch = one?.[1].splice(0, 1 + below(3)) ?? []
      const made = batch.map((breakId) => ({ ...result(breakId), besideId: inForceNow(breakId) }))
      if (one !== undefined) writes.addReevaluated(database, one[0], made)
    },
    end() {
      const [one] = [...running].slice(below(running.size))
      if (one === undefined) return
      const ending = one[1].length === 0 ? 'complete' : pick(['cancelled', 'cut-short'] as const)
      endReevaluation(database, { reevaluationId: one[0], endedAt: morning, ending, problems: [] })
      running.delete(one[0])
      decidable.push(one[0])
    },
    decide() {
      if (decidable.length > 0) decide(database, pick(decidable), pick(['adopted', 'adopted', 'dropped']))
    },
  }
  const often: (keyof typeof deeds)[] = [
    'add',
    'add',
    'end',
    'decide',
    'decide',
    'decide',
    'overrule',
    'overrule',
    'use',
  ]
  const names = [...(Object.keys(deeds) as (keyof typeof deeds)[]), ...often]
  return { database, doOne: () => deeds[pick(names)]() }
}

const ledgerOf = (database: Database.Database) =>
  database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').all()

test.each([1, 2, 3, 4, 5, 6])('shows what the ledger says after every decision of history %i', (seed) => {
  const { database, doOne } = study(seed)
  for (let step = 0; step < 120; step++) {
    try {
      doOne()
    } catch (thrown) {
      // Not every deed may be done at any time; then nothing must have changed.
      if (!(thrown instanceof Trouble)) throw thrown
    }
    const expected = standingBreaks(ledgerOf(database))
    const all = listQuery.parse({ limit: 1000, sort: 'peakN' })
    const shown = listBreaks(database, all).rows
    const byNumber = shown.toSorted((a, b) => a.breakId - b.breakId)
    expect(
      byNumber.map(({ breakId, specimenId, setAside, outcome, peakN, overruled }) => ({
        ...{ breakId, specimenId, setAside, outcome, peakN, overruled: overruled?.kind ?? null },
        inForceId: database.prepare('SELECT evaluation_id FROM break_current WHERE break_id = ?').pluck().get(breakId),
      })),
    ).toEqual(expected)

    const peaks = shown.map(({ peakN }) => peakN ?? Number.POSITIVE_INFINITY)
    expect(peaks).toEqual(peaks.toSorted((a, b) => a - b))
    const counting = expected.filter(({ outcome, setAside }) => outcome === 'break' && setAside === null)
    const broken = breakIds(database, listQuery.parse({ status: 'broken' }))
    expect(new Set(broken)).toEqual(new Set(counting.map(({ breakId }) => breakId)))
    for (const { specimenId, breakInForce } of listSpecimens(database, listQuery.parse({})).rows) {
      const newest = counting.findLast((one) => one.specimenId === specimenId)
      expect([breakInForce?.breakId, breakInForce?.peakN]).toEqual([newest?.breakId, newest?.peakN])
    }
  }
  expect(verify(database, () => {}).faults).toEqual([])
})

test('leaves a break out that is still being captured', () => {
  const database = archiveInMemory()
  storeBreak(database, null, curve)
  beginBreak(database, header(1, null))
  expect(standingBreaks(ledgerOf(database)).map(({ breakId }) => breakId)).toEqual([1])
})
