import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { RoutinePosition } from '#contract/calibration/calibrationRoutine.ts'
import type { CalibrationReading, CalibrationRow, TakenReading } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { routinePositions } from '#domain/calibration/routinePlan.ts'
import type { PlacedReading } from '#domain/calibration/steps/movement.ts'
import type { AveragedReading } from '../reading/steadyReading.ts'

/** The positions of a routine in their order, what was read at each, and the one at hand. */
export type RoutineSteps = {
  positions(): RoutinePosition[]
  /** All that were taken, in the order in which they were; replaced and broken off ones too. */
  readings(): CalibrationReading[]
  /** Index of the position at hand; null: every one has been read or skipped. */
  current(): number | null
  /** The position of that index. Throws Trouble `not-found`. */
  at(index: number): RoutinePosition
  /** The index of the highest load of the last run, where it is reached going up. */
  lastHighest: number
  /** Those that count, as rows of a fit. */
  rows(): CalibrationRow[]
  /** Those that count, each with the index of its position. */
  placed(): PlacedReading[]
  /** Index of the position whose reading is the newest of all; −1: its position was read again, or there is none. */
  newest(): number
  /** Keeps what was read at a position; a reading that was there before is replaced. `number` counts from 0. */
  take(index: number, averaged: AveragedReading, takenAt: string): { number: number; taken: TakenReading }
  toNextAhead(): void
  /** Goes back to a position and reads it again. Throws Trouble `not-found`. */
  repeat(index: number): void
  /** Goes on without reading the position at hand, if there is one. */
  skip(): void
  /** All positions of a run are to be read again; what was read there counts no more. */
  breakOff(run: number): void
}

/** Begins with the first position. */
export function createRoutineSteps(plan: CalibrationPlan, forces: PlannedForces): RoutineSteps {
  const positions = routinePositions(plan, forces)
  const readings: CalibrationReading[] = []
  let current: number | null = 0

  const used = () =>
    positions.flatMap((position, index) =>
      position.reading === null ? [] : [{ index, ...position, ...readings[position.reading]! }],
    )

  function toNextAhead(): void {
    const next = positions.findIndex(({ standing }) => standing === 'ahead')
    current = next < 0 ? null : next
  }

  function at(index: number): RoutinePosition {
    const there = positions[index]
    if (there !== undefined) return there
    throw new Trouble('not-found', `The routine has no position ${index}.`, 'Choose one of those shown.')
  }

  return {
    positions: () => [...positions],
    readings: () => [...readings],
    current: () => current,
    at,
    lastHighest: lastHighest(positions),
    rows: () => used().map(({ run, direction, forceN, mean }) => ({ run, direction, forceN, reading: mean })),
    placed: used,
    newest: () => positions.findLastIndex(({ reading }) => reading !== null && reading === readings.length - 1),
    take(index, { mean, sd, count }, takenAt) {
      const { run, direction, weights, forceN, reading: before } = at(index)
      const taken: TakenReading = { run, direction, weights, forceN, mean, sd, count, takenAt }
      const number = readings.push({ ...taken, standing: 'used', replacedBy: null }) - 1
      if (before !== null) readings[before] = { ...readings[before]!, standing: 'replaced', replacedBy: number }
      positions[index] = { ...at(index), standing: 'taken', reading: number }
      return { number, taken }
    },
    toNextAhead,
    repeat(index) {
      positions[index] = { ...at(index), standing: 'ahead' }
      current = index
    },
    skip() {
      if (current === null) return
      const position = at(current)
      positions[current] = { ...position, standing: position.reading === null ? 'skipped' : 'taken' }
      toNextAhead()
    },
    breakOff(run) {
      for (const [index, reading] of readings.entries())
        if (reading.run === run && reading.standing === 'used') readings[index] = { ...reading, standing: 'broken-off' }
      for (const [index, position] of positions.entries())
        if (position.run === run) positions[index] = { ...position, standing: 'ahead', reading: null }
      toNextAhead()
    },
  }
}

function lastHighest(positions: readonly RoutinePosition[]): number {
  const highestN = Math.max(...positions.map(({ forceN }) => forceN))
  return positions.findLastIndex(({ direction, forceN }) => direction === 'up' && forceN === highestN)
}
