import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { classLimits } from '#domain/calibration/steps/accuracyClass.ts'
import { directionWords } from '#words/calibration/readingWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { signedNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { type FigureLevel, PointFigure, pointShapes } from '../../../widgets/PointFigure.tsx'
import { RunKeys } from './RunKeys.tsx'

/** Residuals of every reading, and the error of every step against the limits of the classes. */
export function AssessmentFigures({
  rows,
  assessment,
}: {
  rows: readonly CalibrationRow[]
  assessment: CalibrationAssessment
}) {
  const { force } = useQuantities()
  const residuals = rows.map((row, index) => {
    const residual = (assessment.residualsN[index] ?? 0) * force.factor
    return {
      x: row.forceN * force.factor,
      y: residual,
      shape: pointShapes[(row.run - 1) % pointShapes.length]!,
      hollow: row.direction === 'down',
      title: `Reading ${index + 1}, run ${row.run} ${directionWords[row.direction]}, ${loadText(row.forceN, force)}: ${signedNumber(residual, 2)} ${force.unit}`,
    }
  })
  const errors = assessment.result.steps.flatMap((step) =>
    step.q === null
      ? []
      : [
          {
            x: step.forceN * force.factor,
            y: step.q,
            shape: 'diamond' as const,
            title: `${loadText(step.forceN, force)}: ${signedNumber(step.q, 2)} %`,
          },
        ],
  )
  const runs = Math.max(...rows.map((row) => row.run), 1)
  return (
    <div className="assessment-figures">
      <figure>
        <PointFigure
          label={`Residuals of ${rows.length} readings over force`}
          points={residuals}
          levels={[{ y: 0, label: '', kind: 'zero' }]}
          xTitle={`force, ${force.unit}`}
          yTitle={`residual, ${force.unit}: force by the curve minus force applied`}
          heightEm={17}
        />
        <figcaption>
          <RunKeys runs={runs} down={rows.some((row) => row.direction === 'down' && row.forceN > 0)} />
        </figcaption>
      </figure>
      <figure>
        <PointFigure
          label="Relative error of every step over force, with the limits of the classes"
          points={errors}
          levels={limitsInView(errors.map(({ y }) => y))}
          xTitle={`force, ${force.unit}`}
          yTitle="relative error q, %"
          heightEm={17}
        />
        <figcaption>
          <p className="run-keys">Each step’s mean against what hung. Between the dashed lines: the class named.</p>
        </figcaption>
      </figure>
    </div>
  )
}

/** The limits up to the first class that holds every error: more would flatten the picture. */
export function limitsInView(errors: readonly number[]): FigureLevel[] {
  const most = Math.max(...errors.map(Math.abs), 0)
  const upTo = classLimits.findIndex((limits) => most <= limits.q)
  const shown = classLimits.slice(0, upTo < 0 ? classLimits.length : upTo + 1)
  return [
    { y: 0, label: '', kind: 'zero' },
    ...shown.flatMap(({ class: name, q }) => [
      { y: q, label: `class ${name}`, kind: 'limit' as const },
      { y: -q, label: '', kind: 'limit' as const },
    ]),
  ]
}
