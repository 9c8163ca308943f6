import type { Study } from '#contract/programme/study.ts'
import type { StudyRecord } from '#contract/programme/studyRecord.ts'
import { planFigures } from '#domain/programme/study/planFigures.ts'
import { studyDoubts } from '#domain/programme/study/studyDoubts.ts'
import { doubtWords } from '#words/programme/study/doubtWords.ts'
import { assumedCvPercent, assumedWords, planSentences } from '#words/programme/study/planWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { dayWords, instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { hashOf } from '../../../../routes/route.ts'
import { planFacts } from './planFacts.ts'

/** What the plan says besides its groups, what it can show, and its versions. */
export function StudyFacts({ record }: { record: StudyRecord }) {
  const { fields } = record.current
  // Asked of all results of the archive, and only where the study itself says nothing
  const variation = useAnswer('studies.variation', fields.cvPercent === null ? {} : null)
  const isAssumed = fields.cvPercent === null && variation.value === null
  const cvPercent = fields.cvPercent ?? variation.value?.cvPercent ?? assumedCvPercent
  const doubts = studyDoubts(fields)
  return (
    <div className="study-facts">
      <section aria-labelledby="plan-title">
        <h2 id="plan-title">Plan</h2>
        <PlanList record={record} />
      </section>
      <section aria-labelledby="shows-title">
        <h2 id="shows-title">What it can show</h2>
        {isAssumed && !variation.pending ? <p className="quiet">{assumedWords}</p> : null}
        {isAssumed && variation.pending ? null : (
          <ul className="plan-sentences">
            {planSentences(planFigures(fields, cvPercent)).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
        {doubts.length === 0 ? null : (
          <ul className="study-doubts" aria-label="To think about">
            {doubts.map((doubt) => (
              <li key={doubt.kind}>{doubtWords(doubt)}</li>
            ))}
          </ul>
        )}
      </section>
      <Work record={record} />
      <Boards record={record} />
      <section aria-labelledby="versions-title">
        <h2 id="versions-title">Versions</h2>
        <ol className="history">
          {record.revisions.toReversed().map((revision) => (
            <Version key={revision.revision} revision={revision} />
          ))}
        </ol>
      </section>
    </div>
  )
}

function PlanList({ record: { current, runnings } }: { record: StudyRecord }) {
  const quantities = useQuantities()
  return (
    <dl className="facts">
      {planFacts(current, runnings, quantities).map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}

/** Where its blocks were glued and broken. */
function Work({ record: { glueUps, sessions } }: { record: StudyRecord }) {
  if (glueUps.length + sessions.length === 0) return null
  return (
    <section aria-labelledby="work-title">
      <h2 id="work-title">Glued and broken</h2>
      <ul className="study-work">
        {glueUps.map(({ glueUpId, gluedOn, blocks }) => (
          <li key={glueUpId}>
            <a href={hashOf({ page: 'glue-up', glueUpId })}>Glue-up on {calendarDayWords(gluedOn)}</a>
            <span className="quiet"> {countOf(blocks, 'block')}</span>
          </li>
        ))}
        {sessions.map(({ breakingSessionId, title, startedAt }) => (
          <li key={breakingSessionId}>
            <a href={hashOf({ page: 'breaking', breakingSessionId })}>{title}</a>
            <span className="quiet"> broken from {dayWords(startedAt)}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Boards({ record: { current, boards } }: { record: StudyRecord }) {
  const named = current.fields.boards
  if (named.length === 0) return null
  const cut = new Map(boards.map(({ board, blocks }) => [board, blocks]))
  return (
    <section aria-labelledby="boards-title">
      <h2 id="boards-title">Boards</h2>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">Board</th>
            <th scope="col" className="numeric">
              Blocks cut
            </th>
            <th scope="col" className="numeric">
              Left
            </th>
          </tr>
        </thead>
        <tbody>
          {named.map(({ name, blocks }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="numeric">{writeCount(cut.get(name) ?? 0)}</td>
              <td className="numeric">{writeCount(blocks - (cut.get(name) ?? 0))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Version({ revision: { revision, recordedAt, by, reason } }: { revision: Study }) {
  return (
    <li>
      <strong>Version {revision}</strong>, {instantWords(recordedAt)}
      {by === '' ? '' : `, ${by}`}
      {reason === '' ? null : <p>{reason}</p>}
    </li>
  )
}
