import { useState } from 'react'
import type { CheckHistory } from '#contract/calibration/checkWeight.ts'
import { type ControlChartKind, controlChart, controlChartOf } from '#figures/calibration/controlChart.ts'
import { checksAbout } from '#words/calibration/charts/aboutWords.ts'
import { verdictWords } from '#words/calibration/verdictWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { VerdictShape } from './VerdictShape.tsx'

const chartKinds = [
  { value: 'individuals', label: 'Individuals and moving range' },
  { value: 'ewma', label: 'Weighted average (EWMA)' },
] as const

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
  const originOf = useFigureOrigin()
  const verdict = verdictWords(history.verdict, force)
  const shown: ControlChartKind[] = kind === 'individuals' ? ['individuals', 'ranges'] : ['ewma']
  const charts = shown.flatMap((one) => controlChartOf(history, one) ?? [])
  return (
    <figure className="check-chart">
      <figcaption>
        <h2>
          {history.weight}, {countOf(history.checks.length, 'check')}
        </h2>
        <p className="chart-verdict" data-standing={history.verdict.standing}>
          <VerdictShape standing={history.verdict.standing} />
          <span>
            <strong>{verdict.sentence}</strong> {verdict.action}
          </span>
        </p>
      </figcaption>
      {charts.length === 0 ? (
        <p className="empty-words">
          {kind === 'ewma'
            ? 'The average begins with the ninth check.'
            : 'Two checks are needed before there is a chart.'}
        </p>
      ) : null}
      {charts.map((chart) => (
        <ExportedFigure
          key={chart.title}
          draw={(size) => controlChart(chart, force, size)}
          origin={() => originOf(checksAbout(history))}
        />
      ))}
    </figure>
  )
}
