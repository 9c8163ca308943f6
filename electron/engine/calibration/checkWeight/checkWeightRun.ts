import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CheckState } from '#contract/calibration/checkWeight.ts'
import type { GravityChoice } from '#contract/calibration/loading.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { checkedConditions, checkedWeights, stackOf } from '#domain/calibration/routinePlan.ts'
import { calibratedScale, calibrationHolds } from '#domain/calibration/scale/calibratedScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { stackForce } from '#domain/calibration/weights/weightStack.ts'
import type { Bench } from '../../bench/bench.ts'
import { throttle } from '../../core/throttle.ts'
import { type AveragedReading, createSteadyReading, type SteadyReading } from '../reading/steadyReading.ts'
import { checkHistories } from './checkHistory.ts'

export type CheckParts = {
  archive: Archive
  clock: Clock
  bench: Bench
  emit: Emit
  inForce(): Calibration | null
}

/** The one-minute check before a session: zero, then one weight. One at a time. */
export type CheckWeightRun = {
  state(): CheckState
  begin(weights: readonly string[], gravity: GravityChoice | null, by: string): Promise<void>
  goOn(): void
  /** Ends the check; nothing of it is stored unless it was done. */
  stop(): void
  close(): void
}

type Running = {
  calibration: Calibration
  weights: string[]
  expectedN: number
  by: string
  zero: AveragedReading | null
  waiting: SteadyReading | null
  /** Both readings are taken and on their way to the disk. */
  storing: boolean
  release: () => void
}

const averageS = 2
const steadyWithinS = 60
const quiet = { mean: null, sd: null, count: 0, unsteadyBecause: null, waitedS: 0, averagedShare: 0 }

/** No check runs. */
export function createCheckWeightRun(parts: CheckParts): CheckWeightRun {
  const { archive, clock, bench, emit } = parts
  let running: Running | null = null
  let latest: number | null = null
  let problem: TroubleMessage | null = null
  let result: CheckState['result'] = null
  const told = throttle(clock, 0.1, () => emit('checkWeight.state', state()))

  function phase(): CheckState['phase'] {
    if (running === null) return result === null ? 'idle' : 'done'
    if (running.storing) return 'averaging'
    if (running.waiting !== null) return running.waiting.averaging() ? 'averaging' : 'waiting-for-steady'
    return running.zero === null ? 'zero' : 'load'
  }

  function state(): CheckState {
    return {
      phase: phase(),
      weights: running?.weights ?? [],
      expectedN: running?.expectedN ?? null,
      live: { ...(running?.waiting?.live() ?? quiet), latest, residualN: null },
      problem,
      result,
    }
  }

  function end(): void {
    running?.waiting?.stop()
    running?.release()
    running = null
    told.ask()
  }

  function calibrationAtHand(): Calibration {
    const calibration = parts.inForce()
    const unit = bench.readingUnit()
    if (calibration !== null && unit !== null && calibrationHolds(calibration, bench.device().kind, unit))
      return calibration
    throw new Trouble(
      'conflict',
      'No calibration is in force for this bench, so there is nothing to check.',
      'Calibrate first, or put a calibration in force.',
    )
  }

  async function store(check: Running, zero: AveragedReading, loaded: AveragedReading): Promise<void> {
    const { calibration, weights, expectedN, by } = check
    const toForce = forceOfReading(calibratedScale(calibration), calibration.readingUnit)!
    const slopeN = Math.abs(toForce(loaded.mean + 0.5) - toForce(loaded.mean - 0.5))
    const stored = await archive.addCheckWeight({
      calibrationId: calibration.calibrationId,
      takenAt: clock.instant(),
      by,
      weight: weights.join(' + '),
      expectedN,
      indicatedN: toForce(loaded.mean) - toForce(zero.mean),
      sdN: loaded.sd * slopeN,
      count: loaded.count,
    })
    const checks = await archive.checkWeights(calibration.calibrationId)
    const history = checkHistories(calibration, checks).find((one) => one.weight === stored.weight)!
    result = { check: stored, verdict: history.verdict }
  }

  return {
    state,
    async begin(names, gravity, by) {
      const calibration = calibrationAtHand()
      const { circumstances } = calibration
      const chosen = gravity ?? circumstances?.gravity
      if (chosen === undefined)
        throw new Trouble(
          'invalid-input',
          'The calibration in force does not say what gravity is here.',
          'Give latitude and height, or gravity itself.',
        )
      const conditions = checkedConditions({
        gravity: chosen,
        airDensityKgPerM3: circumstances?.airDensityKgPerM3 ?? 1.2,
        leverRatio: circumstances?.leverRatio ?? 1,
        leverHalfWidthPercent: circumstances?.leverHalfWidthPercent ?? 0,
      })
      const kept = checkedWeights((await archive.keptWeights()).weights)
      const { forceN } = stackForce(stackOf(names, kept, 'The check'), conditions, bench.state().capacityN)
      const release = bench.occupy('check-weight', {
        reading(timeS, reading) {
          latest = reading
          running?.waiting?.push(timeS, reading)
          // The screen shows the reading also while nothing is being averaged.
          told.ask()
        },
        lost(lostProblem) {
          problem = lostProblem
          end()
        },
      })
      problem = null
      result = null
      running = {
        calibration,
        weights: [...names],
        expectedN: forceN,
        by,
        zero: null,
        waiting: null,
        storing: false,
        release,
      }
      told.ask()
    },
    goOn() {
      const check = running
      if (check === null) throw new Trouble('conflict', 'No check is running.', 'Begin one first.')
      if (check.waiting !== null || check.storing)
        throw new Trouble('conflict', 'A reading is being taken.', 'Wait until it is done, or stop the check.')
      problem = null
      check.waiting = createSteadyReading({
        clock,
        averageS,
        steadyWithinS,
        changed: told.ask,
        done(averaged) {
          check.waiting = null
          const { zero } = check
          if (zero === null) {
            check.zero = averaged
            told.ask()
            return
          }
          check.storing = true
          store(check, zero, averaged)
            .catch((thrown: unknown) => {
              problem = troubleFrom(thrown)
            })
            .finally(end)
        },
        failed(trouble) {
          check.waiting = null
          problem = troubleFrom(trouble)
          told.ask()
        },
      })
      told.ask()
    },
    stop: end,
    close() {
      end()
      told.stop()
    },
  }
}
