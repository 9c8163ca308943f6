import { useState } from 'react'
import type { CheckHistory } from '#contract/calibration/checkWeight.ts'
import { verdictWords } from '#words/calibration/verdictWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { PointFigure } from '../../../widgets/PointFigure.tsx'
import { chartKinds, checkChart, movingRangeChart } from './checkChart.ts'
import { VerdictShape } from './VerdictShape.tsx'

/** The control chart of every weight that was checked under the calibration in force. */
export function CheckCharts({ histories, pending }: { histories: readonly CheckHistory[]; pending: boolean }) {
  const [kind, setKind] = useState<(typeof chartKinds)[number]['value']>('individuals')
  if (histories.length === 0)
    return (
      <section className="check-charts">
        {pending ? null : (
          <p className="empty-words">
            No check yet under this calibration. The first eight set the limits; from the ninth on the chart says when
            something has changed.
          </p>
        )}
      </section>
    )
  return (
    <section className="check-charts" aria-label="Control charts">
      <Choice label="Chart" options={chartKinds} value={kind} onChange={(value) => setKind(value)} />
      {histories.map((history) => (
        <OneChart key={history.weight} history={history} kind={kind} />
      ))}
    </section>
  )
}

function OneChart({ history, kind }: { history: CheckHistory; kind: (typeof chartKinds)[number]['value'] }) {
  const { force } = useQuantities()
  const chart = checkChart(history, kind, force)
  const verdict = verdictWords(history.verdict, force)
  const ranges = kind === 'individuals' ? movingRangeChart(history, force) : null
  return (
    <figure className="check-chart">
      <figcaption>
        <h2>
          {history.weight}, {history.checks.length === 1 ? '1 check' : `${history.checks.length} checks`}
        </h2>
        <p className="chart-verdict" data-standing={history.verdict.standing}>
          <VerdictShape standing={history.verdict.standing} />
          <span>
            <strong>{verdict.sentence}</strong> {verdict.action}
          </span>
        </p>
      </figcaption>
      {chart === null ? (
        <p className="empty-words">
          {kind === 'ewma'
            ? 'The average begins with the ninth check.'
            : 'Two checks are needed before there is a chart.'}
        </p>
      ) : (
        <PointFigure {...chart} />
      )}
      {ranges === null ? null : <PointFigure {...ranges} />}
    </figure>
  )
}
