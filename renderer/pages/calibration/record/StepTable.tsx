import type { CalibrationAssessment } from '#contract/calibration/calibrationAssessment.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { signedNumber, writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Step by step the errors and the class they reach, in the manner of ISO 7500-1. */
export function StepTable({ assessment }: { assessment: CalibrationAssessment }) {
  const { force } = useQuantities()
  const { steps } = assessment.result
  const uncertainties = new Map((assessment.budget?.steps ?? []).map((at) => [at.forceN, at.expandedPercent]))
  const percent = (value: number | null) => (value === null ? '–' : writeFixed(value, 2))
  return (
    <table className="data-table">
      <caption>
        Steps, in the manner of ISO 7500-1, percent of the step’s force (f0: of the highest). – : the readings cannot
        give it.
      </caption>
      <thead>
        <tr>
          <th scope="col" className="numeric">
            Force
          </th>
          <th scope="col" className="numeric">
            Error <i>q</i>
          </th>
          <th scope="col" className="numeric">
            Repeatability <i>b</i>
          </th>
          <th scope="col" className="numeric">
            Reversibility <i>v</i>
          </th>
          <th scope="col" className="numeric">
            Zero <i>f0</i>
          </th>
          <th scope="col" className="numeric">
            Resolution <i>a</i>
          </th>
          <th scope="col">Class</th>
          <th scope="col" className="numeric">
            Uncertainty, <i>k</i> = 2
          </th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step) => {
          const uncertainty = uncertainties.get(step.forceN)
          return (
            <tr key={step.forceN}>
              <th scope="row" className="numeric">
                {loadText(step.forceN, force)}
              </th>
              <td className="numeric">{signedNumber(step.q, 2)}</td>
              <td className="numeric">{percent(step.b)}</td>
              <td className="numeric">{percent(step.v)}</td>
              <td className="numeric">{percent(step.f0)}</td>
              <td className="numeric">{percent(step.a)}</td>
              <td>{step.class}</td>
              <td className="numeric">{uncertainty === undefined ? '–' : `±${writeFixed(uncertainty, 2)}`}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
