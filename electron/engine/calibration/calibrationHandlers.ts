import type { Handlers } from '#contract/procedures.ts'
import type { CalibrationDesk } from './routine/calibrationDesk.ts'
import type { CalibrationRoutine } from './routine/calibrationRoutine.ts'

type Names = Extract<keyof Handlers, `calibration.${string}`>

/** The guided calibration. Every step answers with the state that follows from it. */
export function calibrationHandlers(desk: CalibrationDesk): Pick<Handlers, Names> {
  const step = async (act: (routine: CalibrationRoutine) => void) => {
    act(desk.running())
    return desk.state()
  }
  return {
    'calibration.state': async () => desk.state(),
    'calibration.begin': async ({ plan, by }) => {
      await desk.begin(plan, by)
      return desk.state()
    },
    'calibration.goOn': () => step((routine) => routine.goOn()),
    'calibration.stopWaiting': () => step((routine) => routine.stopWaiting()),
    'calibration.repeat': ({ position }) => step((routine) => routine.repeat(position)),
    'calibration.back': () => step((routine) => routine.back()),
    'calibration.skip': () => step((routine) => routine.skip()),
    'calibration.breakOff': async ({ what, reason }) => {
      if (what === 'run') desk.running().breakOffRun()
      else await desk.breakOff(reason)
      return desk.state()
    },
    'calibration.acceptInverted': ({ accepted }) => step((routine) => routine.acceptInverted(accepted)),
    'calibration.assess': async (choices) => desk.running().assess(choices),
    'calibration.save': (options) => desk.save(options),
  }
}
