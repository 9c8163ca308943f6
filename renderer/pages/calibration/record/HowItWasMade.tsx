import type { Calibration } from '#contract/calibration/calibration.ts'
import { densityWords, toleranceWords } from '#words/calibration/toleranceWords.ts'
import { withoutEndingZeros, writeFixed, writeNumber } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Weights, gravity, air, lever and temperature, as they were typed then. */
export function HowItWasMade({ calibration }: { calibration: Calibration }) {
  const { force, mass, smallMass, density, acceleration, height, temperature } = useQuantities()
  const { circumstances, weights, creep } = calibration
  const lines: [string, string][] = []
  if (circumstances !== null) {
    const { gravity, leverRatio, leverHalfWidthPercent, temperatureStartC, temperatureEndC } = circumstances
    lines.push([
      'Local gravity',
      `${acceleration.text(circumstances.gMPerS2)}${gravity.kind === 'latitude' ? `, ${gravity.ellipsoid} at latitude ${writeNumber(gravity.latitudeDeg, 3)}°, ${height.text(gravity.heightM)}` : `, typed, ±${acceleration.text(gravity.halfWidthMPerS2)}`}`,
    ])
    lines.push(['Air density', density.text(circumstances.airDensityKgPerM3)])
    lines.push([
      'Lever',
      leverRatio === 1 && leverHalfWidthPercent === 0
        ? 'none, weights on the cell'
        : `${writeNumber(leverRatio, 4)} to 1, ±${writeNumber(leverHalfWidthPercent, 2)} %`,
    ])
    lines.push(['Preloads', String(circumstances.preloads)])
    lines.push(['Rated load', force.text(circumstances.capacityN)])
    lines.push([
      'Resolution',
      circumstances.resolution === null
        ? 'not known'
        : `${withoutEndingZeros(writeNumber(circumstances.resolution, 3))} ${calibration.readingUnit}`,
    ])
    const degrees = [temperatureStartC, temperatureEndC].map(temperature.number)
    lines.push([
      'Temperature',
      `${degrees.join(' to ')} ${temperature.unit}${circumstances.temperatureNote === '' ? '' : `, ${circumstances.temperatureNote}`}`,
    ])
  }
  for (const one of creep)
    lines.push([
      one.kind === 'creep' ? 'Creep' : `Return to zero, run ${one.run}`,
      one.kind === 'creep'
        ? `${writeFixed(one.percent, 3)} % under ${force.text(one.loadN)}, from ${one.fromS} to ${one.toS} s`
        : `${writeFixed(one.percent, 3)} % of ${force.text(one.loadN)} left after unloading`,
    ])
  if (lines.length === 0 && weights.length === 0)
    return <p className="empty-words">Read from a file of forces and readings: nothing else was stated.</p>
  return (
    <dl className="facts">
      {lines.map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
      {weights.map((weight) => (
        <div key={weight.name}>
          <dt>Weight {weight.name}</dt>
          <dd>
            {mass.text(weight.conventionalMassKg ?? weight.nominalKg)}
            {weight.conventionalMassKg === null ? ' nominal' : ''}, {toleranceWords(weight, smallMass)};{' '}
            {densityWords(weight, density)}
          </dd>
        </div>
      ))}
    </dl>
  )
}
