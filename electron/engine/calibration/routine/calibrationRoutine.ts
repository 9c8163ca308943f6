import type { Clock } from '#acquisition/clock.ts'
import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type {
  AssessmentChoices,
  RoutineAssessment,
  RoutinePhase,
  RoutinePosition,
  RoutineState,
} from '#contract/calibration/calibrationRoutine.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { CalibrationReading, CalibrationRow, TakenReading } from '#contract/calibration/reading.ts'
import { Trouble, type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { runningFit } from '#domain/calibration/fit/runningFit.ts'
import { routinePositions } from '#domain/calibration/routinePlan.ts'
import type { HeldLoad } from '#domain/calibration/steps/creep.ts'
import { movementOf } from '#domain/calibration/steps/movement.ts'
import { createLoadHold, type LoadHold } from '../reading/loadHold.ts'
import { type AveragedReading, createSteadyReading, type SteadyReading } from '../reading/steadyReading.ts'
import { routineAssessment } from './routineAssessment.ts'

export type RoutineParts = {
  clock: Clock
  plan: CalibrationPlan
  forces: PlannedForces
  readingUnit(): ReadingUnit | null
  /** Throws Trouble when the device is not the one that the routine began with. */
  checkDevice(): void
  /** Called with each reading at the moment it is taken; `number` counts from 0. */
  keep(number: number, taken: TakenReading): void
  changed(): void
}

/** A guided calibration from its first preload to the review. Knows nothing of devices and archives. */
export type CalibrationRoutine = {
  /** Every sample of the stream, in the unit of the device. */
  push(timeS: number, reading: number): void
  /** The device went away: the wait ends, what was read stays. */
  lost(problem: TroubleMessage): void
  goOn(): void
  stopWaiting(): void
  repeat(position: number): void
  back(): void
  skip(): void
  breakOffRun(): void
  acceptInverted(accepted: boolean): void
  assess(choices: AssessmentChoices): RoutineAssessment
  readings(): CalibrationReading[]
  preloadsDone(): number
  state(): RoutineState
  /** Ends a wait that is on. */
  stop(): void
}

const conflict = (message: string, hint: string) => new Trouble('conflict', message, hint)

/** Begins with the preloads. */
export function createCalibrationRoutine(parts: RoutineParts): CalibrationRoutine {
  const { clock, plan, forces } = parts
  const positions = routinePositions(plan, forces)
  const readings: CalibrationReading[] = []
  const heldPosition = plan.creepHoldS === null ? -1 : lastHighest(positions)
  let preloadsDone = 0
  let current: number | null = 0
  let waiting: SteadyReading | null = null
  let hold: LoadHold | null = null
  let held: HeldLoad | null = null
  let latest: number | null = null
  let problem: TroubleMessage | null = null
  let reversed = false
  let invertedAccepted = false
  let suggestedResolution: number | null = null
  let fit: ((reading: number) => number) | null = null

  const preloading = () => preloadsDone < plan.preloads

  function phase(): RoutinePhase {
    if (preloading()) return 'preloading'
    if (waiting !== null) return waiting.averaging() ? 'averaging' : 'waiting-for-steady'
    if (hold !== null) return 'holding'
    if (current === null) return 'review'
    return positions[current]!.forceN === 0 ? 'zero' : 'step'
  }

  function rows(): CalibrationRow[] {
    return positions.flatMap(({ run, direction, forceN, reading }) =>
      reading === null ? [] : [{ run, direction, forceN, reading: readings[reading]!.mean }],
    )
  }

  function toNextAhead(): void {
    const next = positions.findIndex(({ standing }) => standing === 'ahead')
    current = next < 0 ? null : next
  }

  function refuseWhileWaiting(): void {
    if (waiting !== null) throw conflict('A reading is being taken.', 'Wait until it is done, or stop waiting first.')
    if (hold !== null)
      throw conflict('The load is being held for the creep.', 'Wait until it is over, or stop it first.')
  }

  function stopTaking(): void {
    waiting?.stop()
    waiting = null
    hold = null
  }

  /** The load has been on for long enough: what creep there was, and on to the next position. */
  function endHold(ended: LoadHold, at: number): void {
    const found = ended.held()
    const { run, forceN } = positions[at]!
    held = found === null ? null : { run, loadN: forceN, ...found }
    if (found === null)
      problem = troubleFrom(
        new Trouble(
          'not-connected',
          'The signal was away while the load was held, so creep was not measured.',
          'Go on; the reading of the step is kept. Repeat the step to measure creep after all.',
        ),
      )
    hold = null
    toNextAhead()
    parts.changed()
  }

  function takeReading(at: number, averaged: AveragedReading): void {
    const position = positions[at]!
    const { mean, sd, count, lowest, highest } = averaged
    const taken: TakenReading = {
      run: position.run,
      direction: position.direction,
      weights: position.weights,
      forceN: position.forceN,
      mean,
      sd,
      count,
      takenAt: clock.instant(),
    }
    const number = readings.push({ ...taken, standing: 'used', replacedBy: null }) - 1
    parts.keep(number, taken)
    const before = position.reading
    if (before !== null) readings[before] = { ...readings[before]!, standing: 'replaced', replacedBy: number }
    positions[at] = { ...position, standing: 'taken', reading: number }
    if (position.forceN === 0 && suggestedResolution === null) {
      const half = (highest - lowest) / 2
      suggestedResolution = parts.readingUnit() === 'counts' ? Math.max(1, half) : half > 0 ? half : null
    }
    judge(at)
    if (hold === null) toNextAhead()
    else if (hold.over()) endHold(hold, at)
  }

  /** What the newest reading tells of cable, weights and fit. */
  function judge(at: number): void {
    fit = runningFit(rows())
    const used = positions.flatMap((position, index) =>
      position.reading === null ? [] : [{ index, ...position, ...readings[position.reading]! }],
    )
    const movement = movementOf(used, at, invertedAccepted)
    reversed = movement.reversed
    problem = movement.problem === null ? null : troubleFrom(movement.problem)
  }

  function goOn(): void {
    refuseWhileWaiting()
    problem = null
    if (preloading()) {
      preloadsDone += 1
      parts.changed()
      return
    }
    const at = current
    if (at === null) throw conflict('Every step has been read.', 'Look at the result and save it, or repeat a step.')
    parts.checkDevice()
    const { averageS, steadyWithinS, creepHoldS } = plan
    if (at === heldPosition) held = null
    hold = at === heldPosition && creepHoldS !== null ? createLoadHold(creepHoldS, averageS) : null
    waiting = createSteadyReading({
      clock,
      averageS,
      steadyWithinS,
      changed: parts.changed,
      done(averaged) {
        waiting = null
        takeReading(at, averaged)
      },
      failed(trouble) {
        stopTaking()
        problem = troubleFrom(trouble)
        parts.changed()
      },
    })
    parts.changed()
  }

  function stopWaiting(): void {
    const wasHeld = waiting === null && hold !== null
    stopTaking()
    // The reading was taken before the hold, so only the creep goes without.
    if (wasHeld) toNextAhead()
    parts.changed()
  }

  function repeat(position: number): void {
    refuseWhileWaiting()
    if (preloading()) throw conflict('The preloads come first.', 'Do them, or skip them.')
    const there = positions[position]
    if (there === undefined)
      throw new Trouble('not-found', `The routine has no position ${position}.`, 'Choose one of those shown.')
    positions[position] = { ...there, standing: 'ahead' }
    current = position
    problem = null
    parts.changed()
  }

  return {
    push(timeS, reading) {
      latest = reading
      hold?.push(timeS, reading)
      waiting?.push(timeS, reading)
      if (waiting === null && hold?.over() === true && current !== null) endHold(hold, current)
    },
    lost(lostProblem) {
      stopWaiting()
      problem = lostProblem
      parts.changed()
    },
    goOn,
    stopWaiting,
    repeat,
    back() {
      const last = (current ?? positions.length) - 1
      if (preloading() || last < 0) throw conflict('There is no step to go back to.', 'Go on with the step at hand.')
      repeat(last)
    },
    skip() {
      refuseWhileWaiting()
      problem = null
      if (preloading()) preloadsDone = Math.max(preloadsDone, plan.preloads)
      else if (current !== null) {
        const position = positions[current]!
        positions[current] = { ...position, standing: position.reading === null ? 'skipped' : 'taken' }
        toNextAhead()
      }
      parts.changed()
    },
    breakOffRun() {
      stopTaking()
      problem = null
      const { run } = positions[current ?? positions.length - 1]!
      if (held?.run === run) held = null
      readings.forEach((reading, index) => {
        if (reading.run === run && reading.standing === 'used') readings[index] = { ...reading, standing: 'broken-off' }
      })
      positions.forEach((position, index) => {
        if (position.run === run) positions[index] = { ...position, standing: 'ahead', reading: null }
      })
      fit = runningFit(rows())
      toNextAhead()
      parts.changed()
    },
    acceptInverted(accepted) {
      invertedAccepted = accepted
      const last = positions.findLastIndex(({ reading }) => reading === readings.length - 1 && reading >= 0)
      if (last >= 0) judge(last)
      parts.changed()
    },
    assess(choices) {
      const inverted = choices.invertedAccepted || invertedAccepted
      return routineAssessment({ rows: rows(), held, plan, forces }, { ...choices, invertedAccepted: inverted })
    },
    readings: () => [...readings],
    preloadsDone: () => preloadsDone,
    state() {
      const at = preloading() ? null : current
      const live = waiting?.live()
      const mean = live?.mean ?? latest
      return {
        phase: phase(),
        plan,
        gMPerS2: forces.gMPerS2,
        readingUnit: parts.readingUnit(),
        preloadsDone,
        positions: [...positions],
        current: at,
        readings: readings.map((reading) => ({
          ...reading,
          residualN: fit === null ? null : fit(reading.mean) - reading.forceN,
        })),
        live: {
          ...(live ?? quiet),
          ...(waiting === null && hold !== null ? { averagedShare: hold.share() } : {}),
          latest,
          residualN: fit === null || at === null || mean === null ? null : fit(mean) - positions[at]!.forceN,
        },
        problem,
        reversed,
        invertedAccepted,
        suggestedResolution,
      }
    },
    stop: stopTaking,
  }
}

/** The highest load of the last run, where it is reached going up. */
function lastHighest(positions: readonly RoutinePosition[]): number {
  const highestN = Math.max(...positions.map(({ forceN }) => forceN))
  return positions.findLastIndex(({ direction, forceN }) => direction === 'up' && forceN === highestN)
}

const quiet = { mean: null, sd: null, count: 0, unsteadyBecause: null, waitedS: 0, averagedShare: 0 }

/** What is shown while no routine runs. */
export const noRoutine: RoutineState = {
  phase: 'planning',
  plan: null,
  gMPerS2: null,
  readingUnit: null,
  preloadsDone: 0,
  positions: [],
  current: null,
  readings: [],
  live: { ...quiet, latest: null, residualN: null },
  problem: null,
  reversed: false,
  invertedAccepted: false,
  suggestedResolution: null,
}
