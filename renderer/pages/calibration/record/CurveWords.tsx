import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { fitWords } from '#words/calibration/methodWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** The curve with its coefficients, as anybody can use it elsewhere. */
export function CurveWords({ assessment, unit }: { assessment: CalibrationAssessment; unit: ReadingUnit }) {
  const { force } = useQuantities()
  const { coefficients, coefficientSE } = assessment.result
  return (
    <>
      <p className="prose">
        Force in {force.unit} = <i>b</i>0 + <i>b</i>1 <i>r</i>
        {coefficients.length > 2 ? (
          <>
            {' '}
            + <i>b</i>2 <i>r</i>²
          </>
        ) : null}
        {coefficients.length > 3 ? (
          <>
            {' '}
            + <i>b</i>3 <i>r</i>³
          </>
        ) : null}
        , <i>r</i> the reading in {unit}. {fitWords(assessment)}
      </p>
      <dl className="facts">
        {coefficients.map((value, power) => (
          <div key={power}>
            <dt>
              <i>b</i>
              {power}
            </dt>
            <dd>
              {(value * force.factor).toPrecision(9).replace('-', '−')}
              <span className="quiet">
                {coefficientSE[power] == null
                  ? ''
                  : ` ± ${(coefficientSE[power] * force.factor).toPrecision(2).replace('-', '−')} (SE)`}
              </span>
            </dd>
          </div>
        ))}
      </dl>
    </>
  )
}
