import { checkRangeWords } from '#words/calibration/checkRangeWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Says of a check weight that the calibration in force was not verified at its force; nothing where it was. */
export function OutsideRange({ expectedN }: { expectedN: number | null }) {
  const { calibration } = useBench()
  const { force } = useQuantities()
  if (expectedN === null || calibration === null) return null
  const words = checkRangeWords(expectedN, calibration.verifiedRangeN, force)
  return words === null ? null : <p className="prose">{words}</p>
}
