import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import { classReasonWords } from '#words/calibration/classWords.ts'
import { degreeWords, lackOfFitWords } from '#words/calibration/fitWords.ts'
import { classWords, rangeText } from '#words/calibration/rangeWords.ts'
import { uncertaintyText } from '#words/calibration/uncertaintyWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { writeNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import './summary.css'

/** The four figures that a calibration is known by. */
export function AssessmentSummary({ assessment }: { assessment: CalibrationAssessment }) {
  const { force } = useQuantities()
  const { result, classRanges } = assessment
  const degree = result.degree as keyof typeof degreeWords
  return (
    <dl className="summary-figures">
      <div>
        <dt>Class</dt>
        <dd>{result.class === 'none' ? 'none' : result.class}</dd>
        <dd className="figure-words">
          {[classReasonWords(result.steps, result.class, force), 'in the manner of ISO 7500-1']
            .filter(Boolean)
            .join('; ')}
        </dd>
      </div>
      <div>
        <dt>Verified range</dt>
        <dd>{rangeText(result.verifiedRangeN, force)}</dd>
        <dd className="figure-words">
          {classRanges.length === 0
            ? 'no class is reached at the highest step'
            : classRanges.map((range) => `${classWords(range.class)} from ${loadText(range.fromN, force)}`).join('; ')}
        </dd>
      </div>
      <div>
        <dt>Uncertainty, k = 2</dt>
        <dd>{uncertaintyText(result.expandedUncertaintyPercent)}</dd>
        <dd className="figure-words">worst in the range</dd>
      </div>
      <div>
        <dt>Curve</dt>
        <dd>{degreeWords[degree]}</dd>
        <dd className="figure-words">
          lack of fit: {lackOfFitWords(assessment.lackOfFit)}
          {result.residualSD === null
            ? ''
            : `; residual SD ${writeNumber(result.residualSD * force.factor, 3)} ${force.unit}`}
        </dd>
      </div>
    </dl>
  )
}
