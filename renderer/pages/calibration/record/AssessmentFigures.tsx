import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { residualFigure } from '#figures/calibration/residualFigure.ts'
import { stepErrorFigure } from '#figures/calibration/stepErrorFigure.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'

/** Residuals of every reading, and the error of every step against the limits of the classes. */
export function AssessmentFigures({
  rows,
  assessment,
}: {
  rows: readonly CalibrationRow[]
  assessment: CalibrationAssessment
}) {
  const { force } = useQuantities()
  const residuals = rows.map((row, index) => ({
    ...row,
    number: index + 1,
    residualN: assessment.residualsN[index] ?? 0,
  }))
  return (
    <div className="figure-pair">
      <Figure draw={(size) => residualFigure({ residuals, soFar: false }, force, size)} />
      <Figure draw={(size) => stepErrorFigure(assessment.result.steps, force, size)} />
    </div>
  )
}
