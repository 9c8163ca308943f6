import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { AssessmentChoices, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { checkedWeights, plannedForces } from '#domain/calibration/routinePlan.ts'
import type { Bench } from '../../bench/bench.ts'
import { createOutbox } from '../../core/outbox.ts'
import { throttle } from '../../core/throttle.ts'
import { type CalibrationRoutine, createCalibrationRoutine, noRoutine } from './calibrationRoutine.ts'

export type DeskParts = {
  archive: Archive
  clock: Clock
  bench: Bench
  emit: Emit
  inForce(): Calibration | null
}

export type SavingOptions = {
  choices: AssessmentChoices
  name: string
  by: string
  dueOn: string | null
  note: string
  temperatureEndC: number | null
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
  close(): Promise<void>
}

type Running = {
  routine: CalibrationRoutine
  routineId: number
  plan: CalibrationPlan
  /** The device it was begun on: what is connected later does not matter to its readings. */
  source: string
  device: Calibration['device']
  unit: ReadingUnit
  release: () => void
}

/** How often the state is told while a reading is taken, s. */
const tellEveryS = 0.1

/** No routine runs. */
export function createCalibrationDesk(parts: DeskParts): CalibrationDesk {
  const { archive, clock, bench, emit } = parts
  let running: Running | null = null
  const outbox = createOutbox({
    clock,
    onProblem(problem) {
      if (problem !== null)
        emit('trouble', {
          ...problem,
          message: `${problem.message} Readings of the calibration wait in memory until they can be written.`,
        })
    },
  })

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
        const { label, kind } = bench.device()
        const unit = bench.readingUnit() ?? 'counts'
        const routineId = await archive.beginRoutine({ begunAt: clock.instant(), by, source: label, plan })
        routine = createCalibrationRoutine({
          clock,
          plan,
          forces,
          readingUnit: bench.readingUnit,
          checkDevice() {
            if (bench.device().label === label && bench.readingUnit() === unit) return
            throw new Trouble(
              'conflict',
              `This calibration was begun on ${label}, and another device is connected now.`,
              `Connect ${label} again, or break this calibration off. The readings so far are kept.`,
            )
          },
          keep: (number, taken) => outbox.put(() => archive.addRoutineReading(routineId, number, taken)),
          changed: told.ask,
        })
        running = { routine, routineId, plan, source: label, device: kind, unit, release }
        told.ask()
      } catch (thrown) {
        release()
        throw thrown
      }
    },

    async save({ choices, name, by, dueOn, note, temperatureEndC }) {
      const { routine, routineId, plan, source, device, unit } = atWork()
      const { phase } = routine.state()
      if (phase === 'waiting-for-steady' || phase === 'averaging' || phase === 'holding')
        throw new Trouble('conflict', 'A reading is being taken.', 'Wait until it is done, or stop waiting first.')
      const { rows, creep, assessment } = routine.assess(choices)
      const { gravity, airDensityKgPerM3, leverRatio, leverHalfWidthPercent } = plan.conditions
      const forces = plannedForces(plan, bench.state().capacityN)
      const inForce = parts.inForce()
      // Readings that could not be written yet must be there before the calibration that is made of them.
      await outbox.drained()
      const stored = await archive.addCalibration(
        {
          name,
          madeAt: clock.instant(),
          by,
          supersedes: inForce?.device === device ? inForce.calibrationId : null,
          dueOn,
          source,
          device,
          readingUnit: unit,
          circumstances: {
            gravity,
            gMPerS2: forces.gMPerS2,
            airDensityKgPerM3,
            leverRatio,
            leverHalfWidthPercent,
            capacityN: forces.capacityN,
            preloads: routine.preloadsDone(),
            resolution: choices.resolution ?? plan.resolution,
            temperatureStartC: plan.temperatureStartC,
            temperatureEndC,
            temperatureNote: plan.temperatureNote,
          },
          weights: checkedWeights(plan.weights),
          readings: routine.readings(),
          rows,
          creep,
          assessment,
          note,
        },
        routineId,
      )
      end()
      emit('calibrations.changed', { calibrationIds: [stored.calibrationId] })
      return stored
    },

    async breakOff(reason) {
      const { routine, routineId } = atWork()
      routine.stop()
      await outbox.drained()
      await archive.breakOffRoutine(routineId, clock.instant(), reason)
      end()
      emit('calibrations.changed', { calibrationIds: [] })
    },

    async close() {
      running?.routine.stop()
      told.stop()
      await outbox.close()
    },
  }
}
