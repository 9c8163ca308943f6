import type { CalibrationDrift } from '#contract/calibration/calibrationRecords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { dayWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { PointFigure } from '../../../widgets/PointFigure.tsx'
import { driftSeries } from './driftSeries.ts'

/** Slope and zero of one device over its calibrations, against the first of them. */
export function DriftFigures({ drift }: { drift: readonly CalibrationDrift[] }) {
  const { force } = useQuantities()
  const series = driftSeries(drift)
  if (series.length < 2) return null
  const names = series.map(({ madeAt }) => dayWords(madeAt))
  const points = (value: (one: (typeof series)[number]) => number, decimals: number, unit: string) =>
    series.map((one, index) => ({
      x: index,
      y: value(one),
      shape: 'square' as const,
      title: `${names[index]}, ${one.name}: ${writeFixed(value(one), decimals)} ${unit}`,
    }))
  return (
    <section aria-labelledby="drift-title">
      <h2 id="drift-title">Drift since {names[0]}, calibrations of the same device as the newest</h2>
      <div className="assessment-figures">
        <PointFigure
          label="Slope of every calibration against the first"
          points={points((one) => one.slopePercent, 3, '%')}
          levels={[{ y: 0, label: '', kind: 'zero' }]}
          xTitle=""
          yTitle="slope, % from the first"
          joined
          xNames={names}
          heightEm={14}
        />
        <PointFigure
          label="Zero of every calibration against the first"
          points={points((one) => one.zeroN * force.factor, 2, force.unit)}
          levels={[{ y: 0, label: '', kind: 'zero' }]}
          xTitle=""
          yTitle={`zero, ${force.unit} from the first`}
          joined
          xNames={names}
          heightEm={14}
        />
      </div>
    </section>
  )
}
