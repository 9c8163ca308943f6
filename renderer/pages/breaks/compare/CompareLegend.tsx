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
        <Line className="legend-curve" /> a break
      </li>
      {withMedian ? (
        <>
          <li>
            <Line className="legend-median" /> median
          </li>
          <li>
            <Line className="legend-quartile" /> quartiles
          </li>
        </>
      ) : null}
      {withAside ? (
        <li>
          <Line className="legend-aside" /> set aside
        </li>
      ) : null}
      {withOutlying ? (
        <li>
          <OutlyingShape /> outlying
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
