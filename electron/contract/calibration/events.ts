import { routineState } from './calibrationRoutine.ts'
import { checkState } from './checkWeight.ts'

/** What the routine and the check say unasked. */
export const calibrationEvents = { 'calibration.state': routineState, 'checkWeight.state': checkState }
