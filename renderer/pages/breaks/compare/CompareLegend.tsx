import { comparedLineNames } from '#words/breaks/compare/comparedFigureWords.ts'
import { OutlyingShape } from './OutlyingShape.tsx'

/** What the lines of the plot stand for: told apart by their form, not by colour alone. */
export function CompareLegend({
  withMedian,
  withAside,
  withOutlying,
}: {
  withMedian: boolean
  withAside: boolean
  withOutlying: boolean
}) {
  return (
    <ul className="compare-legend">
      <li>
        <Line className="legend-curve" /> {comparedLineNames.curve}
      </li>
      {withMedian ? (
        <>
          <li>
            <Line className="legend-median" /> {comparedLineNames.median}
          </li>
          <li>
            <Line className="legend-quartile" /> {comparedLineNames.quartile}
          </li>
        </>
      ) : null}
      {withAside ? (
        <li>
          <Line className="legend-aside" /> {comparedLineNames.aside}
        </li>
      ) : null}
      {withOutlying ? (
        <li>
          <OutlyingShape /> {comparedLineNames.outlying}
        </li>
      ) : null}
    </ul>
  )
}

function Line({ className }: { className: string }) {
  return (
    <svg className={`legend-line ${className}`} viewBox="0 0 28 10" aria-hidden="true">
      <path d="M1 5H27" />
    </svg>
  )
}
