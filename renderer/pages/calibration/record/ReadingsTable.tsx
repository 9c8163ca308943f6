import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { CalibrationReading } from '#contract/calibration/reading.ts'
import { readingText } from '#words/calibration/readingText.ts'
import { directionWords, standingWords } from '#words/calibration/readingWords.ts'
import { loadText, stackWords } from '#words/calibration/weightWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'

/** Every raw reading as it was taken, also those that were repeated or broken off. */
export function ReadingsTable({
  readings,
  unit,
}: {
  readings: readonly CalibrationReading[]
  /** null: not recorded, the device's own. */
  unit: ReadingUnit | null
}) {
  const { force } = useQuantities()
  return (
    <table className="data-table readings">
      <caption>
        Raw readings in the order in which they were taken, in {unit ?? 'the unit of the device'}. None is ever removed.
      </caption>
      <thead>
        <tr>
          <th scope="col" className="numeric">
            No.
          </th>
          <th scope="col">Run</th>
          <th scope="col">Weights</th>
          <th scope="col" className="numeric">
            Force
          </th>
          <th scope="col" className="numeric">
            Mean
          </th>
          <th scope="col" className="numeric">
            SD
          </th>
          <th scope="col" className="numeric">
            Samples
          </th>
          <th scope="col">Time</th>
          <th scope="col">Status</th>
        </tr>
      </thead>
      <tbody>
        {readings.map((reading, index) => (
          <tr key={reading.takenAt + String(index)} data-standing={reading.standing}>
            <td className="numeric">{index + 1}</td>
            <td>
              {reading.run} {directionWords[reading.direction]}
            </td>
            <td>{stackWords(reading.weights)}</td>
            <td className="numeric">{loadText(reading.forceN, force)}</td>
            <td className="numeric">{readingText(reading.mean, unit ?? 'counts', 1)}</td>
            <td className="numeric">{readingText(reading.sd, unit ?? 'counts', 1)}</td>
            <td className="numeric">{reading.count}</td>
            <td>{new Date(reading.takenAt).toLocaleTimeString('en-GB')}</td>
            <td>
              {reading.replacedBy === null
                ? standingWords[reading.standing]
                : `replaced by no. ${reading.replacedBy + 1}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
