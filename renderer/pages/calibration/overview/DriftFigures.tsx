import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import { driftSeries } from '#domain/calibration/control/driftSeries.ts'
import { driftFigure } from '#figures/calibration/driftFigure.ts'
import { driftAbout } from '#words/calibration/charts/aboutWords.ts'
import { dayWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'

/** Slope and zero of one device over its calibrations, against the first of them. */
export function DriftFigures({ drift }: { drift: readonly CalibrationDrift[] }) {
  const { force } = useQuantities()
  const originOf = useFigureOrigin()
  const series = driftSeries(drift)
  const first = series[0]
  if (first === undefined || series.length < 2) return null
  const origin = () => originOf(driftAbout(series))
  return (
    <section aria-labelledby="drift-title">
      <h2 id="drift-title">Drift since {dayWords(first.madeAt)}, calibrations with the same amplifier as the newest</h2>
      <div className="figure-pair">
        <ExportedFigure draw={(size) => driftFigure(series, 'slope', force, size)} origin={origin} />
        <ExportedFigure draw={(size) => driftFigure(series, 'zero', force, size)} origin={origin} />
      </div>
    </section>
  )
}
