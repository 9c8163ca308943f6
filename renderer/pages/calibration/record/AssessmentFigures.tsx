import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { residualFigure } from '#figures/calibration/residualFigure.ts'
import { stepErrorFigure } from '#figures/calibration/stepErrorFigure.ts'
import type { FigureSize } from '#figures/drawing/figure.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'

/** Residuals of every reading, and the error of every step against the limits of the classes. `origin` null: nothing is stored yet. */
export function AssessmentFigures({
  rows,
  assessment,
  origin,
}: {
  rows: readonly CalibrationRow[]
  assessment: CalibrationAssessment
  origin: (() => string[]) | null
}) {
  const { force } = useQuantities()
  const residuals = rows.map((row, index) => ({
    ...row,
    number: index + 1,
    residualN: assessment.residualsN[index] ?? 0,
  }))
  const figures = [
    (size: FigureSize) => residualFigure({ residuals, soFar: false }, force, size),
    (size: FigureSize) => stepErrorFigure(assessment.result.steps, force, size),
  ]
  return (
    <div className="figure-pair">
      {figures.map((draw, i) =>
        origin === null ? <Figure key={i} draw={draw} /> : <ExportedFigure key={i} draw={draw} origin={origin} />,
      )}
    </div>
  )
}
