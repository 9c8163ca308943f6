import { progressWords } from '#words/programme/breakingWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import './breaking.css'

/** Every breaking session, newest first. */
export function BreakingsPage() {
  const { value: rows, error } = useAnswer('breaking.list', {})
  return (
    <div className="plain-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'bench' })}>Bench</a>
          </p>
          <h1>Breaking sessions</h1>
        </div>
        <div className="record-buttons">
          <a className="button button-primary" href={hashOf({ page: 'new-breaking' })}>
            New session
          </a>
        </div>
      </header>
      <Notice trouble={error} />
      {rows === null ? null : rows.length === 0 ? (
        <p className="empty-words">
          No session yet. One brings the blocks of a pull to the press in their random order, one after the other.
        </p>
      ) : (
        <table className="data-table">
          <thead>
            <tr>
              <th scope="col">Session</th>
              <th scope="col">Begun</th>
              <th scope="col">Blocks</th>
              <th scope="col">Standing</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.breakingSessionId}>
                <td>
                  <a href={hashOf({ page: 'breaking', breakingSessionId: row.breakingSessionId })}>{row.title}</a>
                </td>
                <td>
                  {instantWords(row.startedAt)}
                  {row.by === '' ? '' : ` by ${row.by}`}
                </td>
                <td>{progressWords({ ...row, specimens: row.specimenIds.length })}</td>
                <td>{row.endedAt === null ? <strong>open</strong> : `ended ${instantWords(row.endedAt)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}
