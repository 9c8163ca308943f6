import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import type { JudgedLine } from './dialList.ts'

/** How every line of the list was understood, and what is asked about it. */
export function DialLinesTable({ lines }: { lines: readonly JudgedLine[] }) {
  const { force, strength } = useQuantities()
  return (
    <table className="data-table dial-lines">
      <caption className="visually-hidden">How the lines are understood</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Specimen</th>
          <th scope="col" className="numeric">
            Load <span className="quiet">{force.unit}</span>
          </th>
          <th scope="col" className="numeric">
            Strength <span className="quiet">{strength.unit}</span>
          </th>
          <th scope="col" className="numeric">
            Wood failure <span className="quiet">%</span>
          </th>
          <th scope="col">Pattern</th>
          <th scope="col">Day</th>
          <th scope="col">Note</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <LineRows key={line.line} line={line} />
        ))}
      </tbody>
    </table>
  )
}

function LineRows({ line: { line, said, strengthMPa, error, questions } }: { line: JudgedLine }) {
  const { force, strength } = useQuantities()
  return (
    <>
      <tr>
        <th scope="row">{line}</th>
        <td>{said?.number ?? ''}</td>
        <td className="numeric">{said === null ? '' : force.number(said.peakN)}</td>
        <td className="numeric">{strengthMPa === null ? '' : strength.number(strengthMPa)}</td>
        <td className="numeric">{said?.woodFailurePercent ?? ''}</td>
        <td>{said?.failurePattern ?? ''}</td>
        <td>{said?.brokenOn == null ? '' : calendarDayWords(said.brokenOn)}</td>
        <td>{said?.note ?? ''}</td>
      </tr>
      {error === null && questions.length === 0 ? null : (
        <tr className="dial-said">
          <td colSpan={8} data-error={error === null ? undefined : ''}>
            {error ?? questions.join(' ')}
          </td>
        </tr>
      )}
    </>
  )
}
