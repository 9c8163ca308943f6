import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import type { Bench } from '../../bench/bench.ts'
import { throttle } from '../../core/throttle.ts'
import { readingTaken } from '../reading/loadReading.ts'
import { type BegunOn, deviceNow, refuseOtherDevice } from './begunOn.ts'
import { type CalibrationRoutine, createCalibrationRoutine } from './calibrationRoutine.ts'
import { calibrationToSave, type SavingOptions } from './calibrationToSave.ts'
import { noRoutine } from './routineState.ts'

export type DeskParts = {
  archive: Archive
  clock: Clock
  bench: Bench
  emit: Emit
  inForce(): Calibration | null
}

/** Where a guided calibration is carried out: joins the routine with bench and archive. One at a time. */
export type CalibrationDesk = {
  state(): RoutineState
  /** The routine that runs. Throws Trouble `conflict` when none does. */
  running(): CalibrationRoutine
  /** The number of the running routine in the archive; null: none runs. */
  routineId(): number | null
  begin(plan: CalibrationPlan, by: string): Promise<void>
  save(options: SavingOptions): Promise<Calibration>
  breakOff(reason: string): Promise<void>
  /** Tells nothing more. Readings that wait for the disk stay in the outbox of the bench. */
  close(): void
}

type Running = {
  routine: CalibrationRoutine
  routineId: number
  plan: CalibrationPlan
  begunOn: BegunOn
  /** The lane of its readings in the outbox of the bench. */
  lane: object
  release: () => void
}

/** How often the state is told while a reading is taken, s. */
const tellEveryS = 0.1

/** No routine runs. */
export function createCalibrationDesk(parts: DeskParts): CalibrationDesk {
  const { archive, clock, bench, emit } = parts
  let running: Running | null = null
  const state = () => running?.routine.state() ?? noRoutine
  const told = throttle(clock, tellEveryS, () => emit('calibration.state', state()))

  function atWork(): Running {
    if (running !== null) return running
    throw new Trouble('conflict', 'No calibration is running.', 'Begin one first.')
  }

  function end(): void {
    const ended = running
    if (ended === null) return
    running = null
    ended.routine.stop()
    ended.release()
    told.ask()
  }

  return {
    state,
    running: () => atWork().routine,
    routineId: () => running?.routineId ?? null,

    async begin(plan, by) {
      const forces = plannedForces(plan, bench.state().capacityN)
      let routine: CalibrationRoutine | null = null
      const release = bench.occupy('calibration', {
        reading(timeS, reading) {
          routine?.push(timeS, reading)
          // The screen shows the reading also while nothing is being averaged.
          told.ask()
        },
        lost: (problem) => routine?.lost(problem),
      })
      try {
        const begunOn = deviceNow(bench)
        const routineId = await archive.beginRoutine({ begunAt: clock.instant(), by, source: begunOn.source, plan })
        const lane = {}
        routine = createCalibrationRoutine({
          ...{ clock, plan, forces, changed: told.ask },
          ...{ readingUnit: bench.readingUnit, taredN: bench.taredN },
          checkDevice: () => refuseOtherDevice(bench, begunOn),
          keep: (number, taken) => bench.outbox.put(() => archive.addRoutineReading(routineId, number, taken), lane),
        })
        running = { routine, routineId, plan, begunOn, lane, release }
        told.ask()
      } catch (thrown) {
        release()
        throw thrown
      }
    },

    async save(options) {
      const { routine, routineId, plan, begunOn, lane } = atWork()
      refuseWhileReading(routine.state().phase)
      const forces = plannedForces(plan, bench.state().capacityN)
      const made = calibrationToSave({ routine, plan, forces, begunOn }, options, parts.inForce(), clock.instant())
      // Readings that could not be written yet must be there before the calibration that is made of them.
      await bench.outbox.drained(lane)
      const stored = await archive.addCalibration(made, routineId)
      end()
      return stored
    },

    async breakOff(reason) {
      const { routine, routineId, lane } = atWork()
      routine.stop()
      await bench.outbox.drained(lane)
      await archive.breakOffRoutine(routineId, clock.instant(), reason)
      end()
    },

    close() {
      running?.routine.stop()
      told.stop()
    },
  }
}

function refuseWhileReading(phase: RoutineState['phase']): void {
  if (phase === 'waiting-for-steady' || phase === 'averaging' || phase === 'holding') throw readingTaken()
}
