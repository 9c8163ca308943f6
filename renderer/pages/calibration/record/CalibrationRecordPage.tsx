import { useState } from 'react'
import type { OutputOf } from '#contract/procedures.ts'
import { calibrationAbout } from '#words/calibration/charts/aboutWords.ts'
import { dueWords } from '#words/calibration/dueWords.ts'
import { noteSentences } from '#words/calibration/noteWords.ts'
import { ownCalibration } from '#words/calibration/ownCalibration.ts'
import { noUncertaintyWords } from '#words/calibration/uncertaintyWords.ts'
import { simulatedMark } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { instantWords } from '#words/units/times.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useFigureOrigin } from '../../../parts/figures/useFigureOrigin.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { PutInForceDialog } from '../overview/PutInForceDialog.tsx'
import { AssessmentFigures } from './AssessmentFigures.tsx'
import { AssessmentSummary } from './AssessmentSummary.tsx'
import { BudgetTable } from './BudgetTable.tsx'
import { CurveWords } from './CurveWords.tsx'
import { HowItWasMade } from './HowItWasMade.tsx'
import { ReadingsTable } from './ReadingsTable.tsx'
import { StepTable } from './StepTable.tsx'
import './calibrationRecord.css'
import { useSigner } from '../../../parts/decisions/signer.ts'

/** One calibration with all that it says and every reading that it rests on; a page that can be printed. */
export function CalibrationRecordPage({ calibrationId }: { calibrationId: number }) {
  const answer = useAnswer('calibrations.get', { calibrationId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <RecordView record={answer.value} />
}

function RecordView({ record }: { record: OutputOf<'calibrations.get'> }) {
  const { calibration, inForce, decisions } = record
  const { assessment } = calibration
  const signer = useSigner()
  const originOf = useFigureOrigin()
  const [putting, setPutting] = useState(false)
  return (
    <article className="certificate">
      <header className="record-head">
        <div>
          <p className="crumb no-print">
            <a href={hashOf({ page: 'calibration' })}>Calibration</a>
          </p>
          <h1>
            {calibration.name} {inForce ? <strong className="tag">in force</strong> : null}{' '}
            {calibration.device === 'virtual' ? <strong className="tag">{simulatedMark}</strong> : null}
          </h1>
          <p className="record-words">
            Calibration {calibration.calibrationId}, {instantWords(calibration.madeAt)}
            {calibration.by === '' ? '' : ` by ${calibration.by}`} · {calibration.source} · recalibration due:{' '}
            {dueWords(calibration.dueOn)}
          </p>
        </div>
        <div className="record-buttons no-print">
          <button type="button" className="button" onClick={() => print()}>
            Print
          </button>
          {inForce ? null : (
            <button type="button" className="button button-primary" onClick={() => setPutting(true)}>
              Put in force
            </button>
          )}
        </div>
      </header>
      <Notice trouble={unreadableTrouble(record.unreadable)} />
      {inForce ? null : (
        <p className="running-words no-print">
          <strong>Not in force.</strong> The next break does not use it until somebody puts it in force.
        </p>
      )}
      <p className="own-words">
        {ownCalibration} It describes the bench on that day and is as accurate as the weights were.
      </p>
      <AssessmentSummary assessment={assessment} />
      <AssessmentFigures
        rows={calibration.rows}
        assessment={assessment}
        origin={() => originOf(calibrationAbout(calibration), calibration.device === 'virtual' ? 'all' : 'none')}
      />
      <div className="certificate-columns">
        <section aria-labelledby="notes-title">
          <h2 id="notes-title">Remarks</h2>
          <ul className="flag-list">
            {assessment.notes.length === 0 ? <li>No remarks.</li> : null}
            {noteSentences(assessment).map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          {calibration.note === '' ? null : <p className="certificate-note">{calibration.note}</p>}
          <h2>Curve</h2>
          <CurveWords assessment={assessment} unit={calibration.readingUnit} />
        </section>
        <section aria-labelledby="made-title">
          <h2 id="made-title">How it was made</h2>
          <HowItWasMade calibration={calibration} />
        </section>
      </div>
      <StepTable assessment={assessment} />
      {assessment.budget === null ? (
        <p className="quiet">{noUncertaintyWords}</p>
      ) : (
        <BudgetTable budget={assessment.budget} />
      )}
      {calibration.readings.length === 0 ? null : (
        <ReadingsTable readings={calibration.readings} unit={calibration.readingUnit} />
      )}
      {decisions.length === 0 ? null : (
        <section aria-labelledby="decisions-title">
          <h2 id="decisions-title">When it was put in force</h2>
          <ol className="history">
            {decisions.toReversed().map((decision) => (
              <li key={decision.calibrationDecisionId}>
                {instantWords(decision.recordedAt)}, {decision.by}
                {decision.reason === '' ? '' : `: ${decision.reason}`}
              </li>
            ))}
          </ol>
        </section>
      )}
      <p className="print-only">
        Printed {instantWords(new Date().toISOString())}
        {signer === '' ? '' : ` by ${signer}`}.
      </p>
      {putting ? <PutInForceDialog calibration={calibration} onClose={() => setPutting(false)} /> : null}
    </article>
  )
}
