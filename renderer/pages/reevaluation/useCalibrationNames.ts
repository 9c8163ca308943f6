// Held by tests/browser/reevaluationRun.spec.ts.
import { useAnswer } from '../../host/useAnswer.ts'

/** Names the calibration that breaks were evaluated under; null: each kept its own. */
export function useCalibrationNames(): (calibrationId: number | null) => string {
  const list = useAnswer('calibrations.list', {})
  return (calibrationId) => {
    if (calibrationId === null) return 'each its own'
    return list.value?.rows.find((row) => row.calibrationId === calibrationId)?.name ?? `calibration ${calibrationId}`
  }
}
