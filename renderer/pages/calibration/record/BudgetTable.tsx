import type { UncertaintyBudget } from '#contract/calibration/uncertainty.ts'
import { sourceWords } from '#words/calibration/uncertaintyWords.ts'
import { loadText } from '#words/calibration/weightWords.ts'
import { writeFixed, writeNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** What the uncertainty at the highest step is made of, in the manner of JCGM 100. */
export function BudgetTable({ budget }: { budget: UncertaintyBudget }) {
  const { force } = useQuantities()
  const at = budget.steps.reduce((most, step) => (step.forceN > most.forceN ? step : most))
  const wholeSquared = at.combinedN ** 2
  const freedom = (value: number | null) => (value === null ? '∞' : writeNumber(value, 0))
  return (
    <table className="data-table">
      <caption>
        Uncertainty budget at {loadText(at.forceN, force)}, in the manner of JCGM 100. Worst in the range: ±
        {writeNumber(budget.worstPercent, 2)} % at {loadText(budget.worstAtN, force)}.
      </caption>
      <thead>
        <tr>
          <th scope="col">Source</th>
          <th scope="col" className="numeric">
            Standard uncertainty <span className="quiet">{force.unit}</span>
          </th>
          <th scope="col">Distribution</th>
          <th scope="col" className="numeric">
            Degrees of freedom
          </th>
          <th scope="col" className="numeric">
            Share of variance
          </th>
        </tr>
      </thead>
      <tbody>
        {at.contributions.map((part) => (
          <tr key={part.source}>
            <th scope="row">{sourceWords[part.source]}</th>
            <td className="numeric">{writeFixed(part.standardUncertaintyN * force.factor, 4)}</td>
            <td>{part.distribution}</td>
            <td className="numeric">{freedom(part.degreesOfFreedom)}</td>
            <td className="numeric">
              {wholeSquared === 0 ? '–' : `${writeFixed((100 * part.standardUncertaintyN ** 2) / wholeSquared, 1)} %`}
            </td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Combined</th>
          <td className="numeric">{writeFixed(at.combinedN * force.factor, 4)}</td>
          <td />
          <td className="numeric">{freedom(at.effectiveDegreesOfFreedom)} effective</td>
          <td className="numeric">100 %</td>
        </tr>
        <tr>
          <th scope="row">
            Expanded, <i>k</i> = 2
          </th>
          <td className="numeric">{writeFixed(at.expandedN * force.factor, 3)}</td>
          <td colSpan={3}>
            ±{writeFixed(at.expandedPercent, 2)} % of the force; for 95 % by Student’s <i>t</i>: <i>k</i> ={' '}
            {writeFixed(at.coverageFactor95, 2)}, ±{writeFixed(at.expanded95N * force.factor, 3)} {force.unit}
          </td>
        </tr>
      </tfoot>
    </table>
  )
}
