import type { BenchState } from '#contract/bench/bench.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { CalibrationDecision } from '#contract/calibration/calibrationRecords.ts'
import type { LiveReading, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import type { CheckHistory, CheckState } from '#contract/calibration/checkWeight.ts'
import type { WeightEntry } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import type { Handlers } from '#contract/procedures.ts'
import { topicsOf } from '#contract/topics.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { checkWeightVerdict } from '#domain/calibration/control/checkWeight.ts'
import { ewmaChart } from '#domain/calibration/control/ewmaChart.ts'
import { individualsChart } from '#domain/calibration/control/individualsChart.ts'
import { runningFit } from '#domain/calibration/fit/runningFit.ts'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { calibrationSummary, driftOf } from '#engine/calibration/calibrationHistory.ts'
import {
  rowsOf,
  scriptedCalibration,
  scriptedPlan,
  scriptedPositions,
  scriptedReading,
  sharesOf,
} from './scriptedReadings.ts'

export type ScriptedCalibration = {
  handlers: Partial<Handlers>
  weights: WeightEntry[]
  calibrations: Calibration[]
  /** The routine at the position that comes after so many readings; `change` says what the signal does there. */
  routineAfter(taken: number, change?: Partial<RoutineState>): void
  setCheck(change: Partial<CheckState>): void
  /** Three calibrations of three years, the newest in force, and routines that were broken off. */
  withCalibrations(): void
  /** So many checks of a weight, the last of them off by so many newtons. */
  withChecks(count: number, lastOffN?: number): void
}

export const quietLive: LiveReading = {
  latest: 8121,
  mean: null,
  sd: null,
  count: 0,
  unsteadyBecause: null,
  waitedS: 0,
  averagedShare: 0,
  residualN: null,
}

const planning: RoutineState = {
  phase: 'planning',
  plan: null,
  gMPerS2: null,
  readingUnit: null,
  preloadsDone: 0,
  positions: [],
  current: null,
  readings: [],
  live: quietLive,
  problem: null,
  reversed: false,
  invertedAccepted: false,
  suggestedResolution: null,
}

/** The calibration of a scripted host: real mathematics on an invented cell, readings at once. */
export function createScriptedCalibration(parts: {
  emit: Emit
  bench(): BenchState
  setBench(change: Partial<BenchState>): void
}): ScriptedCalibration {
  const calibrations: Calibration[] = []
  const decisions: CalibrationDecision[] = []
  let weights: WeightEntry[] = []
  let routine: RoutineState = planning
  let check: CheckState = {
    phase: 'idle',
    weights: [],
    expectedN: null,
    live: quietLive,
    problem: null,
    result: null,
  }
  let checks: CheckHistory[] = []
  let brokenOff: Awaited<ReturnType<Handlers['calibrations.history']>>['brokenOff'] = []

  const inForceId = () => decisions.at(-1)?.calibrationId ?? null
  const find = (calibrationId: number) => {
    const found = calibrations.find((one) => one.calibrationId === calibrationId)
    if (found === undefined) throw new Trouble('not-found', `There is no calibration ${calibrationId}.`, 'Go back.')
    return found
  }

  function setRoutine(next: RoutineState): RoutineState {
    routine = next
    parts.emit('calibration.state', routine)
    return routine
  }
  function setCheck(change: Partial<CheckState>): CheckState {
    check = { ...check, ...change }
    parts.emit('checkWeight.state', check)
    return check
  }

  function after(plan: CalibrationPlan, taken: number): RoutineState {
    const all = scriptedPositions(plan)
    const positions = all.map((position, index) =>
      index < taken ? { ...position, standing: 'taken' as const, reading: index } : position,
    )
    const readings = all.slice(0, taken).map((position, index) => scriptedReading(position, index))
    const fit = runningFit(rowsOf(readings))
    const next = positions[taken]
    return {
      ...planning,
      phase: next === undefined ? 'review' : next.forceN === 0 ? 'zero' : 'step',
      plan,
      gMPerS2: plannedForces(plan, null).gMPerS2,
      readingUnit: 'counts',
      preloadsDone: plan.preloads,
      positions,
      current: next === undefined ? null : taken,
      readings: readings.map((reading) => ({
        ...reading,
        residualN: fit === null ? null : fit(reading.mean) - reading.forceN,
      })),
      suggestedResolution: taken === 0 ? null : 6,
    }
  }

  function putInForce(calibrationId: number | null, by: string, reason: string): CalibrationDecision {
    const decision = {
      calibrationDecisionId: decisions.length + 1,
      recordedAt: '2026-05-11T09:30:00.000Z',
      by,
      reason,
      calibrationId,
    }
    decisions.push(decision)
    const calibration = calibrationId === null ? null : find(calibrationId)
    parts.setBench(
      calibration === null
        ? { calibration: null, scale: { kind: 'uncalibrated-scale', nPerCount: 0.012 } }
        : {
            calibration: {
              calibrationId: calibration.calibrationId,
              name: calibration.name,
              verifiedRangeN: calibration.assessment.result.verifiedRangeN,
              dueOn: calibration.dueOn,
              overdue: false,
            },
            scale: {
              kind: 'calibration',
              calibrationId: calibration.calibrationId,
              coefficients: calibration.assessment.result.coefficients,
            },
          },
    )
    parts.emit('records.changed', { topics: ['calibrations'] })
    return decision
  }

  const handlers: Partial<Handlers> = {
    'weights.list': async () => ({
      weights,
      savedAt: weights.length === 0 ? null : '2026-05-11T08:40:00.000Z',
      by: 'bench 1',
    }),
    'weights.save': async ({ weights: next, by }) => {
      weights = next
      parts.emit('records.changed', { topics: ['weights'] })
      return { weights, savedAt: '2026-05-11T08:40:00.000Z', by }
    },
    'calibration.state': async () => routine,
    'calibration.begin': async ({ plan }) => {
      plannedForces(plan, parts.bench().capacityN)
      parts.setBench({ busyWith: 'calibration' })
      return setRoutine({ ...after(plan, 0), phase: 'preloading', current: null, preloadsDone: 0 })
    },
    'calibration.goOn': async () => {
      if (routine.phase !== 'preloading') return setRoutine(after(routine.plan!, (routine.current ?? 0) + 1))
      const preloadsDone = routine.preloadsDone + 1
      return setRoutine(preloadsDone < routine.plan!.preloads ? { ...routine, preloadsDone } : after(routine.plan!, 0))
    },
    'calibration.breakOff': async ({ what, reason }) => {
      if (what === 'routine')
        brokenOff = [
          ...brokenOff,
          {
            routineId: brokenOff.length + 1,
            begunAt: '2026-05-11T08:50:00.000Z',
            by: 'bench 1',
            source: 'virtual amplifier: mixed',
            plan: routine.plan!,
            endedAt: '2026-05-11T08:58:00.000Z',
            reason,
            readings: routine.readings.map(({ residualN: _residualN, ...reading }) => ({
              ...reading,
              standing: 'broken-off' as const,
            })),
          },
        ]
      parts.setBench({ busyWith: null })
      parts.emit('records.changed', { topics: topicsOf('routine', [brokenOff.length]) })
      return setRoutine(what === 'routine' ? planning : after(routine.plan!, 0))
    },
    'calibration.assess': async ({ degree, throughZero, fitOver, resolution }) => {
      const rows = rowsOf(routine.readings)
      const assessment = calibrationOf(rows, { degree, throughZero, fitOver, resolution, ...sharesOf() })
      return { rows, creep: [], assessment }
    },
    'calibration.save': async ({ name, dueOn, note }) => {
      const stored = {
        ...scriptedCalibration(calibrations.length + 1, { name, dueOn, madeAt: '2026-05-11T09:20:00.000Z' }),
        note,
      }
      calibrations.push(stored)
      parts.setBench({ busyWith: null })
      setRoutine(planning)
      parts.emit('records.changed', { topics: topicsOf('calibration', [stored.calibrationId]) })
      return stored
    },
    'calibrations.list': async () => ({
      rows: calibrations.toReversed().map((one) => calibrationSummary(one, inForceId(), one.madeAt)),
    }),
    'calibrations.get': async ({ calibrationId }) => ({
      calibration: find(calibrationId),
      inForce: inForceId() === calibrationId,
      decisions: decisions.filter((decision) => decision.calibrationId === calibrationId),
    }),
    'calibrations.history': async () => ({ drift: driftOf(calibrations), decisions, brokenOff }),
    'calibrations.putInForce': async ({ calibrationId, by, reason }) => putInForce(calibrationId, by, reason),
    'checkWeight.state': async () => check,
    'checkWeight.begin': async ({ weights: names }) => {
      const { steps } = plannedForces({ ...scriptedPlan, weights, steps: [names] }, null)
      return setCheck({ phase: 'zero', weights: names, expectedN: steps[0]!.forceN, result: null })
    },
    'checkWeight.goOn': async () => setCheck({ phase: check.phase === 'zero' ? 'load' : 'waiting-for-steady' }),
    'checkWeight.stop': async () => setCheck({ phase: 'idle' }),
    'checkWeight.history': async () => ({ rows: checks }),
    'bench.putVirtualWeights': async () => ({}),
  }

  return {
    handlers,
    get weights() {
      return weights
    },
    set weights(next) {
      weights = next
      parts.emit('records.changed', { topics: ['weights'] })
    },
    calibrations,
    routineAfter(taken, change = {}) {
      parts.setBench({ busyWith: 'calibration' })
      setRoutine({ ...after(scriptedPlan, taken), ...change })
    },
    setCheck,
    withCalibrations() {
      weights = scriptedPlan.weights
      const year = (index: number, slopeShare: number, zeroCounts: number) =>
        scriptedCalibration(index, {
          name: `Spring ${2023 + index}`,
          madeAt: `${2023 + index}-04-${10 + index}T09:00:00.000Z`,
          dueOn: `${2024 + index}-04-30`,
          slopeShare,
          zeroCounts,
        })
      calibrations.push(year(1, 0, 0), year(2, -0.00062, 41), year(3, -0.00081, 67))
      putInForce(3, 'bench 1', 'first calibration of the season')
      const begun = after(scriptedPlan, 9)
      routine = begun
      void handlers['calibration.breakOff']!({ what: 'routine', reason: 'a weight touched the frame' })
    },
    withChecks(count, lastOffN = 0.04) {
      const expectedN = 196.26
      const deviations = Array.from({ length: count }, (_, index) => 0.05 + 0.11 * Math.sin(4.7 * (index + 1)))
      deviations[count - 1] = lastOffN
      const verdict = checkWeightVerdict(deviations, 0.5)
      const chart = individualsChart(deviations.slice(0, 8))
      const later = deviations.slice(8)
      const average = later.length === 0 ? null : ewmaChart(later, chart.centre, (chart.upper - chart.centre) / 3)
      checks = [
        {
          calibrationId: 3,
          weight: '20 kg',
          checks: deviations.map((deviationN, index) => ({
            checkId: index + 1,
            calibrationId: 3,
            takenAt: new Date(Date.UTC(2026, 4, 11 + index, 7, 50)).toISOString(),
            by: 'bench 1',
            weight: '20 kg',
            expectedN,
            indicatedN: expectedN + deviationN,
            sdN: 0.03,
            count: 160,
            deviationN,
          })),
          verdict,
          individuals: {
            ...chart,
            movingRanges: deviations.slice(1).map((value, index) => Math.abs(value - deviations[index]!)),
          },
          ewma: average === null ? null : { ...average, smoothed: [...average.smoothed] },
        },
      ]
      const { deviationN: _deviationN, ...stored } = checks[0]!.checks.at(-1)!
      setCheck({ phase: 'done', weights: ['20 kg'], expectedN, result: { check: stored, verdict } })
    },
  }
}
