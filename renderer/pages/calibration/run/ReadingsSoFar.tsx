import type { RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { directionWords } from '#words/calibration/readingWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { PointFigure, pointShapes } from '../../../widgets/PointFigure.tsx'
import { RunKeys } from '../record/RunKeys.tsx'

/** Where the readings so far lie about the curve through them: a slip shows while it can still be repeated. */
export function ReadingsSoFar({ state }: { state: RoutineState }) {
  const { force } = useQuantities()
  const points = state.readings.flatMap((reading, index) =>
    reading.residualN === null || reading.standing !== 'used'
      ? []
      : [
          {
            x: reading.forceN * force.factor,
            y: reading.residualN * force.factor,
            shape: pointShapes[(reading.run - 1) % pointShapes.length]!,
            hollow: reading.direction === 'down',
            title: `Reading ${index + 1}, run ${reading.run} ${directionWords[reading.direction]}, ${loadText(reading.forceN, force)}`,
          },
        ],
  )
  if (points.length < 3)
    return (
      <p className="so-far-empty">
        From the third reading on, this place shows how far each one lies from the curve through all of them.
      </p>
    )
  return (
    <figure className="so-far">
      <PointFigure
        label="Residuals of the readings so far over force"
        points={points}
        levels={[{ y: 0, label: '', kind: 'zero' }]}
        xTitle={`force, ${force.unit}`}
        yTitle={`residual of the readings so far, ${force.unit}`}
        heightEm={13}
      />
      <figcaption>
        <RunKeys runs={Math.max(...state.readings.map(({ run }) => run))} down={state.plan?.decreasing ?? false} />
      </figcaption>
    </figure>
  )
}
