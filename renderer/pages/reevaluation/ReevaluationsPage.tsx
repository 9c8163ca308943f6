import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { changedWords } from '#words/breaks/thresholdWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { hashOf } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { StandingTag } from './StandingTag.tsx'
import { useCalibrationNames } from './useCalibrationNames.ts'
import { useDone } from './useRunning.ts'
import './reevaluation.css'

/** Every re-evaluation, newest first, and what became of its results. */
export function ReevaluationsPage() {
  const list = useAnswer('reevaluations.list', {})
  const rows = list.value?.rows ?? []
  const unreadable = unreadableTrouble(list.value?.unreadable)
  return (
    <div className="reevaluations">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
          </p>
          <h1>Re-evaluations</h1>
          <p className="record-words">
            Stored curves evaluated again. The new results stand beside the ones in force and count only when somebody
            adopts them.
          </p>
        </div>
        <div className="record-buttons">
          <a className="button button-primary" href={hashOf({ page: 'new-reevaluation' })}>
            Evaluate breaks again
          </a>
        </div>
      </header>
      <Notice trouble={list.error ?? unreadable} />
      {rows.length === 0 ? (
        list.pending || unreadable !== null ? null : (
          <p className="empty-words">
            Nothing was evaluated again yet. It is worth doing after an update, with a better calibration, or when a
            setting did not suit the specimens.
          </p>
        )
      ) : (
        <table className="data-table">
          <thead>
            <tr>
              <th scope="col">Begun</th>
              <th scope="col">Breaks</th>
              <th scope="col">Calibration</th>
              <th scope="col">Changed settings</th>
              <th scope="col">Method</th>
              <th scope="col">By</th>
              <th scope="col">Status</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.reevaluationId} row={row} />
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

function Row({ row }: { row: ReevaluationSummary }) {
  const quantities = useQuantities()
  const nameOf = useCalibrationNames()
  const evaluated = useDone(row)
  const problems = row.end?.problems.length ?? 0
  return (
    <tr>
      <th scope="row" className="when">
        <a href={hashOf({ page: 'reevaluation', reevaluationId: row.reevaluationId })}>{instantWords(row.begunAt)}</a>
      </th>
      <td>
        {countOf(row.breaks, 'break')}
        {problems === 0 ? null : <span className="quiet">, {writeCount(problems)} could not be</span>}
      </td>
      <td>{nameOf(row.calibrationId)}</td>
      <td className="wordy">
        {changedWords(row.settings, quantities).join(', ') || <span className="quiet">none</span>}
      </td>
      <td>{row.method}</td>
      <td>{row.by}</td>
      <td className="wordy">
        <StandingTag summary={{ ...row, evaluated }} />
      </td>
    </tr>
  )
}
