import { calibrationProcedures } from '#contract/calibrationProcedures.ts'
import { Trouble } from '#contract/errors.ts'
import type { Handlers } from '#contract/procedures.ts'

type Names = keyof typeof calibrationProcedures

/** Calibration: answered as soon as the engine can. */
export function calibrationHandlers(): Pick<Handlers, Names> {
  const refuse = async () => {
    throw new Trouble('unsupported', 'Calibration is not ready in this version.', 'Use a newer version.')
  }
  return Object.fromEntries(Object.keys(calibrationProcedures).map((name) => [name, refuse])) as never
}
