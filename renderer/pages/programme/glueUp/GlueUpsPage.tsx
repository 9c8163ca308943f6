import { calendarDayWords } from '#words/units/calendarDays.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import './glueUp.css'

/** Every glue-up, newest first. */
export function GlueUpsPage() {
  const { value: rows, error } = useAnswer('glueUps.list', {})
  return (
    <div className="plain-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'specimens' })}>Specimens</a>
          </p>
          <h1>Glue-ups</h1>
        </div>
        <div className="record-buttons">
          <a className="button button-primary" href={hashOf({ page: 'new-glue-up' })}>
            New glue-up
          </a>
        </div>
      </header>
      <Notice trouble={error} />
      {rows === null ? null : rows.length === 0 ? (
        <p className="empty-words">Nothing was glued yet. A glue-up makes a specimen of each of its blocks.</p>
      ) : (
        <table className="data-table">
          <thead>
            <tr>
              <th scope="col">Glued on</th>
              <th scope="col">Study</th>
              <th scope="col" className="numeric">
                Blocks
              </th>
              <th scope="col">Lots</th>
              <th scope="col">People</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ glueUpId, fields, studyTitle, blocks, by }) => (
              <tr key={glueUpId}>
                <td>
                  <a href={hashOf({ page: 'glue-up', glueUpId })}>{calendarDayWords(fields.gluedOn)}</a>
                </td>
                <td>{studyTitle ?? <span className="quiet">no study</span>}</td>
                <td className="numeric">{blocks}</td>
                <td>{fields.lots.map(({ lot }) => lot).join(', ')}</td>
                <td>{fields.people === '' ? by : fields.people}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}
