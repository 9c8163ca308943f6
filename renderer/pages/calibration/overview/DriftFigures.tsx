import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import { driftSeries } from '#domain/calibration/control/driftSeries.ts'
import { driftFigure } from '#figures/calibration/driftFigure.ts'
import { dayWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { Figure } from '../../../parts/Figure.tsx'

/** Slope and zero of one device over its calibrations, against the first of them. */
export function DriftFigures({ drift }: { drift: readonly CalibrationDrift[] }) {
  const { force } = useQuantities()
  const series = driftSeries(drift)
  const first = series[0]
  if (first === undefined || series.length < 2) return null
  return (
    <section aria-labelledby="drift-title">
      <h2 id="drift-title">Drift since {dayWords(first.madeAt)}, calibrations with the same amplifier as the newest</h2>
      <div className="figure-pair">
        <Figure draw={(size) => driftFigure(series, 'slope', force, size)} />
        <Figure draw={(size) => driftFigure(series, 'zero', force, size)} />
      </div>
    </section>
  )
}
