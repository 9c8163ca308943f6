import type { StudySummary } from '#contract/programme/studyRecord.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { progressWords } from '#words/programme/study/studyWords.ts'
import { countOf } from '#words/units/counts.ts'
import { dayWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { LongName } from '../../../widgets/tables/LongName.tsx'

/** Every study, newest first, and how far it is. */
export function StudiesPage() {
  const list = useAnswer('studies.list', {})
  const rows = list.value?.rows ?? []
  const unreadable = unreadableTrouble(list.value?.unreadable)
  return (
    <div className="record-page">
      <header className="record-head">
        <div>
          <h1>Studies</h1>
          <p className="record-words">
            A question, the groups that answer it, and the blocks of each. What a study can and cannot show is seen
            before the first glue is mixed.
          </p>
        </div>
        <div className="record-buttons">
          <a className="button button-primary" href={hashOf({ page: 'new-study' })}>
            Plan a study
          </a>
        </div>
      </header>
      <Notice trouble={list.error ?? unreadable} />
      {rows.length > 0 ? (
        <StudyTable rows={rows} />
      ) : list.pending || unreadable !== null ? null : (
        <p className="empty-words">No study is planned yet.</p>
      )}
    </div>
  )
}

function StudyTable({ rows }: { rows: readonly StudySummary[] }) {
  return (
    <div>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">Study</th>
            <th scope="col">Adhesives</th>
            <th scope="col">Exposures</th>
            <th scope="col">Ages</th>
            <th scope="col">Blocks</th>
            <th scope="col">Planned on</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ studyId, recordedAt, fields, counts }) => (
            <tr key={studyId}>
              <th scope="row">
                <a href={hashOf({ page: 'study', studyId })}>
                  <LongName name={fields.title} />
                </a>
              </th>
              <td>{countOf(fields.adhesives.length, 'adhesive')}</td>
              <td>{fields.exposures.filter((name) => name !== '').join(', ')}</td>
              <td>{countOf(fields.agesMonths.length, 'age')}</td>
              <td className="wordy">{progressWords(counts)}</td>
              <td className="when">{dayWords(recordedAt)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
