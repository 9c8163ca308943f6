import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CheckState, CheckWeightReading } from '#contract/calibration/checkWeight.ts'
import type { GravityChoice } from '#contract/calibration/loading.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { calibrationHolds } from '#domain/calibration/scale/calibratedScale.ts'
import { loadedZero, looksLoaded } from '#domain/calibration/steps/loadedZero.ts'
import type { Bench } from '../../bench/bench.ts'
import { throttle } from '../../core/throttle.ts'
import { createLoadReading } from '../reading/loadReading.ts'
import { checkHistories } from './checkHistory.ts'
import { checkReading, expectedForceN } from './checkLoad.ts'
import { checkState, type RunningCheck } from './checkState.ts'

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
  /** Ends the check; nothing of it is stored unless both readings were taken. */
  stop(): void
  /** Tells nothing more. A check that waits for the disk stays in the outbox of the bench. */
  close(): void
}

const averaging = { averageS: 2, steadyWithinS: 60, holdS: null }

/** No check runs. */
export function createCheckWeightRun(parts: CheckParts): CheckWeightRun {
  const { archive, clock, bench, emit } = parts
  let running: RunningCheck | null = null
  let latest: number | null = null
  let problem: TroubleMessage | null = null
  let result: CheckState['result'] = null
  let closed = false
  const told = throttle(clock, 0.1, () => emit('checkWeight.state', state()))
  const changed = () => {
    if (!closed) told.ask()
  }

  function state(): CheckState {
    const storageProblem = running?.storing === true ? bench.state().storageProblem : null
    return checkState(running, { latest, problem: problem ?? storageProblem, result })
  }

  function end(): void {
    running?.loadReading.stop()
    running?.release()
    running = null
    changed()
  }

  /** On its way to the disk, in the order of all that is taken on the bench: a disk that is full for a moment loses nothing. */
  function store(check: RunningCheck, reading: Omit<CheckWeightReading, 'checkId'>): void {
    check.storing = true
    let stored: CheckWeightReading | null = null
    bench.outbox.put(async () => {
      stored = await archive.addCheckWeight(reading)
    }, check)
    // A write of its own, so that trouble in reading back does not keep the check twice.
    bench.outbox.put(async () => {
      const checks = await archive.checkWeights(reading.calibrationId)
      const histories = checkHistories(check.calibration, checks.rows)
      const { verdict } = histories.find(({ weight }) => weight === reading.weight)!
      // Another check may have begun meanwhile.
      if (running !== null && running !== check) return
      result = { check: stored!, verdict }
      if (running === check) end()
      changed()
    }, check)
  }

  function read(check: RunningCheck): void {
    check.loadReading.begin(averaging, {
      read(averaged) {
        if (check.zero !== null) return store(check, checkReading(check, check.zero, averaged, clock.instant()))
        check.zero = averaged
        problem = zeroDoubt(bench.taredN(averaged.mean), check.expectedN)
      },
      held() {},
      over() {},
      failed(trouble) {
        problem = troubleFrom(trouble)
      },
    })
  }

  return {
    state,
    async begin(names, gravity, by) {
      const calibration = calibrationAtHand(bench, parts.inForce())
      const kept = (await archive.keptWeights()).weights
      const expectedN = expectedForceN(names, kept, calibration, gravity, bench.state().capacityN)
      const loadReading = createLoadReading(clock, changed)
      const release = bench.occupy('check-weight', {
        reading(timeS, reading) {
          latest = reading
          loadReading.push(timeS, reading)
          // The screen shows the reading also while nothing is being averaged.
          changed()
        },
        lost(lostProblem) {
          problem = lostProblem
          end()
        },
      })
      problem = null
      result = null
      running = { calibration, weights: [...names], expectedN, by, zero: null, loadReading, storing: false, release }
      changed()
    },
    goOn() {
      const check = running
      if (check === null) throw new Trouble('conflict', 'No check is running.', 'Begin one first.')
      if (check.loadReading.phase() !== null || check.storing)
        throw new Trouble('conflict', 'A reading is being taken.', 'Wait until it is done, or stop the check.')
      problem = null
      read(check)
      changed()
    },
    stop: end,
    close() {
      end()
      closed = true
      told.stop()
    },
  }
}

/** The question that a zero raises which reads as if the weight were on it; null: none. Forces in N. */
function zeroDoubt(seenN: number | null, expectedN: number): TroubleMessage | null {
  return looksLoaded(seenN, expectedN) ? troubleFrom(loadedZero(stopIfSo)) : null
}

const stopIfSo = 'If so, stop this check, take it off and begin again. If not, go on.'

/** The calibration that the bench works under. Throws Trouble `conflict` when there is none. */
function calibrationAtHand(bench: Bench, calibration: Calibration | null): Calibration {
  const unit = bench.readingUnit()
  if (calibration !== null && unit !== null && calibrationHolds(calibration, bench.device().kind, unit))
    return calibration
  throw new Trouble(
    'conflict',
    'No calibration is in force for this bench, so there is nothing to check.',
    'Calibrate first, or put a calibration in force.',
  )
}
