import type { ClimateLimits } from '#contract/findings/climate.ts'
import type { ClimateCount, StoreClimate } from '#contract/findings/climateAnswers.ts'
import {
  climateGapsWords,
  climateGapWords,
  countedFromWords,
  coveredWords,
  swingSizeWords,
} from '#words/findings/climate/climateWords.ts'
import { writeCount, writeTenths } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { HeadRow } from '../../../widgets/tables/HeadRow.tsx'

const shownGaps = 12

type Row = { name: string; count: ClimateCount }

/** What is counted in each calendar year and in all of them, and where readings are missing. */
export function ClimateYears({ climate, limits }: { climate: StoreClimate; limits: ClimateLimits }) {
  const quantities = useQuantities()
  const rows: Row[] = [
    ...climate.years.map(({ year, ...count }) => ({ name: String(year), count })),
    { name: 'All', count: climate.whole },
  ]
  return (
    <section className="climate-years" aria-label="Year by year">
      <h2>Year by year</h2>
      <AirTable rows={rows} />
      <SwingTable rows={rows} limits={limits} />
      <p className="prose">{countedFromWords(quantities)}</p>
      <p className="prose">{climateGapsWords(climate.gapCount, climate.gapHours)}</p>
      {climate.gaps.length === 0 ? null : (
        <ul className="climate-gaps">
          {climate.gaps.slice(0, shownGaps).map((gap) => (
            <li key={gap.fromS}>{climateGapWords(gap)}</li>
          ))}
        </ul>
      )}
    </section>
  )
}

function AirTable({ rows }: { rows: readonly Row[] }) {
  const { temperature } = useQuantities()
  const range = (extent: ClimateCount['humidityPercent'], number: (value: number) => string) =>
    extent === null ? '–' : `${number(extent.mean)} (${number(extent.min)} to ${number(extent.max)})`
  const heads = [
    'Readings for',
    `Temperature, ${temperature.unit}`,
    'RH, %',
    'Wood moisture, %',
    'Froze and thawed, times',
  ]
  return (
    <table className="data-table">
      <caption>
        Mean (lowest to highest) of each calendar year, UTC; a year that is not covered whole counts less
      </caption>
      <HeadRow words={['Year']} numbers={heads} />
      <tbody>
        {rows.map(({ name, count }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="numeric">{coveredWords(count.hours)}</td>
            <td className="numeric">{range(count.temperatureC, temperature.number)}</td>
            <td className="numeric">{range(count.humidityPercent, writeTenths)}</td>
            <td className="numeric">{range(count.moisturePercent, writeTenths)}</td>
            <td className="numeric">{count.freezeThawCycles}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function SwingTable({ rows, limits }: { rows: readonly Row[]; limits: ClimateLimits }) {
  const quantities = useQuantities()
  const { temperature } = quantities
  const [{ count: first }] = rows as [Row]
  const heads = [
    ...first.moistureSwings.map(({ least }) => `Moisture by ${swingSizeWords(least, null)}`),
    ...first.temperatureSwings.map(({ least }) => `Temperature by ${swingSizeWords(least, quantities)}`),
    `Hours below ${temperature.text(limits.temperatureBelowC)}`,
    `Hours above ${temperature.text(limits.temperatureAboveC)}`,
    `Hours below ${limits.humidityBelowPercent} % RH`,
    `Hours above ${limits.humidityAbovePercent} % RH`,
  ]
  const cells = ({ moistureSwings, temperatureSwings, hoursBeyond }: ClimateCount) => [
    ...[...moistureSwings, ...temperatureSwings].map(({ count }) => writeTenths(count)),
    ...[hoursBeyond.temperatureBelow, hoursBeyond.temperatureAbove].map(writeCount),
    ...[hoursBeyond.humidityBelow, hoursBeyond.humidityAbove].map(writeCount),
  ]
  return (
    <table className="data-table">
      <caption>Swings (rainflow, ASTM E1049; half cycles count half) and hours beyond limits</caption>
      <HeadRow words={['Year']} numbers={heads} />
      <tbody>
        {rows.map(({ name, count }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {cells(count).map((text, i) => (
              <td key={heads[i]} className="numeric">
                {text}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
