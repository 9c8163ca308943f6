import { useState } from 'react'
import type { GlueUpRecord } from '#contract/programme/glueUpProcedures.ts'
import { ageInMonthsWords, calendarDayWords } from '#words/units/calendarDays.ts'
import { countOf } from '#words/units/counts.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { StudyCrumb } from '../../../parts/programme/StudyCrumb.tsx'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { CorrectGlueUpDialog } from './CorrectGlueUpDialog.tsx'
import { GlueUpHistory } from './GlueUpHistory.tsx'
import './glueUp.css'
import { glueUpFacts } from './glueUpFacts.ts'

/** One glue-up: how it was done, and the specimens it made. */
export function GlueUpPage({ glueUpId }: { glueUpId: number }) {
  const { value: record, error } = useAnswer('glueUps.get', { glueUpId })
  return (
    <div className="plain-page">
      <Notice trouble={error} />
      {record === null ? null : <GlueUpView record={record} />}
    </div>
  )
}

function GlueUpView({ record }: { record: GlueUpRecord }) {
  const quantities = useQuantities()
  const [correcting, setCorrecting] = useState(false)
  const { length, area } = quantities
  const { fields, studyTitle, studyId, specimens, by, recordedAt } = record
  return (
    <>
      <header className="record-head">
        <div>
          <p className="crumb">
            <StudyCrumb studyId={studyId} />
            <a href={hashOf({ page: 'glue-ups' })}>Glue-ups</a>
          </p>
          <h1>Glued on {calendarDayWords(fields.gluedOn)}</h1>
          <p className="record-words">
            {studyTitle === null ? 'Blocks of no study' : studyTitle} · recorded {instantWords(recordedAt)}
            {by === '' ? '' : ` by ${by}`}
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button" onClick={() => setCorrecting(true)}>
            Correct
          </button>
          <a className="button" href={hashOf({ page: 'new-glue-up', ...(studyId === null ? {} : { studyId }) })}>
            Another glue-up
          </a>
        </div>
      </header>
      <dl className="facts">
        {glueUpFacts(fields, quantities).map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <table className="data-table">
        <caption>{countOf(specimens.length, 'specimen')}</caption>
        <thead>
          <tr>
            <th scope="col">Number</th>
            <th scope="col">Adhesive</th>
            <th scope="col">Exposure</th>
            <th scope="col">Age</th>
            <th scope="col" className="numeric">
              Length <span className="quiet">{length.unit}</span>
            </th>
            <th scope="col" className="numeric">
              Width <span className="quiet">{length.unit}</span>
            </th>
            <th scope="col" className="numeric">
              Area <span className="quiet">{area.unit}</span>
            </th>
            <th scope="col">Place</th>
          </tr>
        </thead>
        <tbody>
          {specimens.map((one) => (
            <tr key={one.specimenId}>
              <th scope="row">
                <a href={hashOf({ page: 'specimen', specimenId: one.specimenId })}>{one.number}</a>
              </th>
              <td>{one.adhesive}</td>
              <td>{one.exposure}</td>
              <td>{one.ageMonths !== null ? ageInMonthsWords(one.ageMonths) : studyId === null ? '' : 'spare'}</td>
              <td className="numeric">{length.number(one.overlapLengthMm)}</td>
              <td className="numeric">{length.number(one.overlapWidthMm)}</td>
              <td className="numeric">{area.number(one.areaMm2)}</td>
              <td>{one.place}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <GlueUpHistory entered={record.entered} corrections={record.corrections} />
      {correcting ? <CorrectGlueUpDialog record={record} onClose={() => setCorrecting(false)} /> : null}
    </>
  )
}
