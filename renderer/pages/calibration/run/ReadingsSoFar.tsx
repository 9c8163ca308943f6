import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { residualFigure } from '#figures/calibration/residualFigure.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'

/** Where the readings so far lie about the curve through them: a slip shows while it can still be repeated. */
export function ReadingsSoFar({ state }: { state: RoutineState }) {
  const { force } = useQuantities()
  const residuals = state.readings.flatMap(({ residualN, standing, ...reading }, index) =>
    residualN === null || standing !== 'used' ? [] : [{ ...reading, number: index + 1, residualN }],
  )
  if (residuals.length < 3)
    return (
      <p className="so-far-empty">
        From the third reading on, this place shows how far each one lies from the curve through all of them.
      </p>
    )
  return (
    <div className="so-far">
      <Figure draw={(size) => residualFigure({ residuals, soFar: true }, force, size)} />
    </div>
  )
}
