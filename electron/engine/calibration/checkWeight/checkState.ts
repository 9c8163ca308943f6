import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { quietReading } from '../reading/loadReading.ts'
import type { RunningCheck } from './checkWeightRun.ts'

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
