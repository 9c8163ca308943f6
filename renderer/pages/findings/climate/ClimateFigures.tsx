import type { ClimateBand, StoreClimate, StoredSeries } from '#contract/findings/climateAnswers.ts'
import { climatePanel, type DayMark } from '#figures/findings/climate/climatePanel.ts'
import { storedStrength } from '#figures/findings/climate/storedStrength.ts'
import { ageInWords } from '#words/breaks/groupName.ts'
import { percentText } from '#words/findings/climate/climateWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { ExportedFigure } from '../../../parts/figures/ExportedFigure.tsx'

const percent = { unit: '%', factor: 1, text: (value: number | null) => (value === null ? '–' : percentText(value)) }

/** Temperature, humidity, moisture and strength over the same time. */
export function ClimateFigures({
  climate,
  store,
  origin,
  series,
  name,
}: {
  climate: StoreClimate
  /** "exposure loft". */
  store: string
  /** What stands below a figure that is saved. */
  origin(): string[]
  series: StoredSeries | null
  name: string
}) {
  const { temperature, strength } = useQuantities()
  const days: DayMark[] = [
    ...(series === null || series.gluedS === null ? [] : [{ timeS: series.gluedS, name: 'first block glued' }]),
    ...(series?.ages ?? []).map(({ ageMonths, brokenS }) => ({
      timeS: brokenS,
      name: `blocks ${ageInWords(ageMonths)} broken`,
    })),
  ]
  const axis = {
    fromS: Math.min(climate.fromS, ...days.map(({ timeS }) => timeS)),
    toS: Math.max(climate.toS, ...days.map(({ timeS }) => timeS)),
  }
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
        <ExportedFigure origin={origin} draw={(size) => storedStrength({ series, axis, name }, strength, size)} />
      )}
      <p className="prose quiet">
        Times are UTC. Wood moisture is that to which this air would bring wood in the end (USDA Wood Handbook, equation
        4-5); a block follows slowly, and its inside more slowly still. Strength is as observed, with 95 % intervals of
        the mean.
      </p>
    </section>
  )
}
