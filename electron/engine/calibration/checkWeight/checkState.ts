// Held by tests/engine/calibration/checkWeight/checkWeightRun.spec.ts.
import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { type LoadReading, quietReading } from '../reading/loadReading.ts'
import type { AveragedReading } from '../reading/steadyReading.ts'
import type { CheckLoad } from './checkLoad.ts'

export type RunningCheck = CheckLoad & {
  zero: AveragedReading | null
  loadReading: LoadReading
  /** Both readings are taken and on their way to the disk. */
  storing: boolean
  release: () => void
}

/** What the check shows, at one moment. `check` null: none runs; the result of the last one stands. */
export function checkState(
  check: RunningCheck | null,
  seen: { latest: number | null; problem: CheckState['problem']; result: CheckState['result'] },
): CheckState {
  const { latest, problem, result } = seen
  return {
    phase: check === null ? (result === null ? 'idle' : 'done') : phaseOf(check),
    weights: check?.weights ?? [],
    expectedN: check?.expectedN ?? null,
    live: { ...(check?.loadReading.live() ?? quietReading), latest, residualN: null },
    problem,
    result,
  }
}

function phaseOf({ storing, loadReading, zero }: RunningCheck): CheckState['phase'] {
  if (storing) return 'averaging'
  const phase = loadReading.phase()
  if (phase !== null) return phase === 'averaging' ? 'averaging' : 'waiting-for-steady'
  return zero === null ? 'zero' : 'load'
}
