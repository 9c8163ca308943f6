import type { RoutinePosition, RoutineState } from '#contract/calibration/calibrationRoutine.ts'

/** The position that a reading is wanted of, or null. */
export function positionAtHand(state: Pick<RoutineState, 'current' | 'positions'>): RoutinePosition | null {
  return state.current === null ? null : (state.positions[state.current] ?? null)
}

/** The heaviest load of the plan, which the preloads use. */
export function heaviestPosition(state: Pick<RoutineState, 'positions'>): RoutinePosition | null {
  return state.positions.reduce<RoutinePosition | null>(
    (most, position) => (most === null || position.forceN > most.forceN ? position : most),
    null,
  )
}

/** What hangs on the cell when everything was done as asked so far. */
export function weightsBefore(state: Pick<RoutineState, 'current' | 'positions'>): readonly string[] {
  return state.current === null ? [] : (state.positions[state.current - 1]?.weights ?? [])
}

/** The position that R repeats: the last that was read before the one at hand; null when there is none. */
export function lastTaken(state: Pick<RoutineState, 'current' | 'positions'>): number | null {
  const end = state.current ?? state.positions.length
  const index = state.positions.findLastIndex((position, at) => position.standing === 'taken' && at < end)
  return index < 0 ? null : index
}
