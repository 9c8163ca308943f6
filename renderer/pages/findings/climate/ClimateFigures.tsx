import type { ClimateBand, PullToCome, StoreClimate, StoredSeries } from '#contract/findings/climateAnswers.ts'
import { climatePanel } from '#figures/findings/climate/climatePanel.ts'
import { storedStrength } from '#figures/findings/climate/storedStrength.ts'
import { toComeWords } from '#words/findings/climate/climateFigureWords.ts'
import { percentText } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'
import { climateDays, toComeOf } from './climateDays.ts'

const percent = { unit: '%', factor: 1, text: (value: number | null) => (value === null ? '–' : percentText(value)) }

/** Temperature, humidity, moisture and strength over the same time. */
export function ClimateFigures({
  climate,
  store,
  origin,
  series,
  toCome,
  name,
}: {
  climate: StoreClimate
  /** "exposure loft". */
  store: string
  /** What stands below a figure that is saved. */
  origin(): string[]
  series: StoredSeries | null
  toCome: readonly PullToCome[]
  name: string
}) {
  const { temperature, strength } = useQuantities()
  const coming = toComeOf(toCome, series)
  const { days, axis } = climateDays(climate, series, coming)
  const panels: { name: string; quantity: typeof percent; band: ClimateBand | null }[] = [
    { name: 'temperature', quantity: temperature, band: climate.bands.temperatureC },
    { name: 'relative humidity', quantity: percent, band: climate.bands.humidityPercent },
    { name: 'wood moisture in the end', quantity: percent, band: climate.bands.moisturePercent },
  ]
  const shown = panels.flatMap(({ band, ...panel }) => (band === null ? [] : [{ ...panel, band }]))
  return (
    <section className="climate-figures" aria-label="Over time">
      {shown.map((panel, i) => (
        <ExportedFigure
          key={panel.name}
          origin={origin}
          draw={(size) =>
            climatePanel({ ...panel, store, gaps: climate.gaps, days, axis, keys: i === shown.length - 1 }, size)
          }
        />
      ))}
      {series === null ? null : (
        <ExportedFigure origin={origin} draw={(size) => storedStrength({ series, axis, days, name }, strength, size)} />
      )}
      {coming.length === 0 ? null : <p className="prose">{toComeWords(coming)}</p>}
      <p className="prose quiet">
        Times are UTC. Wood moisture is that to which this air would bring wood in the end (USDA Wood Handbook, equation
        4-5); a block follows slowly, and its inside more slowly still. Strength is as observed, with 95 % intervals of
        the mean.
      </p>
    </section>
  )
}
