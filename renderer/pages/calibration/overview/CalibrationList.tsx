import type { CalibrationDrift, CalibrationSummary } from '#contract/calibration/calibrationRecords.ts'
import { rangeText } from '#words/calibration/rangeWords.ts'
import { temperatureWords } from '#words/calibration/temperatureWords.ts'
import { deviceWords } from '#words/keeping/demoWords.ts'
import { signedNumber, writeNumber } from '#words/units/numbers.ts'
import { dayWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { hashOf } from '../../../routes/route.ts'

/** Every calibration, newest first, with what changed against the one before it on the same device. */
export function CalibrationList({
  rows,
  drift,
}: {
  rows: readonly CalibrationSummary[]
  drift: readonly CalibrationDrift[]
}) {
  const { force, temperature } = useQuantities()
  const driftOf = new Map(drift.map((one) => [one.calibrationId, one]))
  return (
    <section aria-labelledby="list-title">
      <h2 id="list-title">Calibrations</h2>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">Made</th>
            <th scope="col">Name</th>
            <th scope="col">Class</th>
            <th scope="col">Verified range</th>
            <th scope="col" className="numeric">
              Uncertainty <span className="quiet">%</span>
            </th>
            <th scope="col" className="numeric">
              Slope changed <span className="quiet">%</span>
            </th>
            <th scope="col" className="numeric">
              Zero changed <span className="quiet">{force.unit}</span>
            </th>
            <th scope="col">Temperature</th>
            <th scope="col">Amplifier</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const change = driftOf.get(row.calibrationId)
            const zeroN = change?.zeroChangeN ?? null
            return (
              <tr key={row.calibrationId}>
                <td className="when">{dayWords(row.madeAt)}</td>
                <th scope="row">
                  <a href={hashOf({ page: 'calibration-record', calibrationId: row.calibrationId })}>{row.name}</a>{' '}
                  {row.inForce ? <strong className="tag">in force</strong> : null}
                </th>
                <td>{row.class}</td>
                <td>{rangeText(row.verifiedRangeN, force)}</td>
                <td className="numeric">
                  {row.expandedUncertaintyPercent === null ? '–' : `±${writeNumber(row.expandedUncertaintyPercent, 2)}`}
                </td>
                <td className="numeric">{signedNumber(change?.slopeChangePercent ?? null, 3)}</td>
                <td className="numeric">{signedNumber(zeroN === null ? null : zeroN * force.factor, 2)}</td>
                <td className="wordy">{change === undefined ? '–' : temperatureWords(change, temperature)}</td>
                <td>{deviceWords(row.device)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
