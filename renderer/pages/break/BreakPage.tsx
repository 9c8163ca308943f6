import { useState } from 'react'
import type { BreakRecord } from '#contract/records/break.ts'
import type { Evaluation } from '#contract/records/evaluation.ts'
import { useAction } from '#renderer/host/useAction.ts'
import { useAnswer } from '#renderer/host/useAnswer.ts'
import { Notice } from '#renderer/widgets/Notice.tsx'
import { useQuantities, writeFixed, writeNumber } from '#renderer/widgets/quantities.ts'
import { hashOf } from '../frame/route.ts'
import { AssessDialog } from '../records/AssessDialog.tsx'
import { EvaluateAgainDialog } from '../records/EvaluateAgainDialog.tsx'
import { ReassignDialog } from '../records/ReassignDialog.tsx'
import { SignatureDialog } from '../records/SignatureDialog.tsx'
import { VerificationWords } from '../records/VerificationWords.tsx'
import {
  eventNames,
  eventWords,
  flagWords,
  instantWords,
  isUncalibrated,
  outcomeWord,
  verifiedRangeFlags,
} from '../wording.ts'
import { BreakHistory } from './BreakHistory.tsx'
import { EvaluationsTable } from './EvaluationsTable.tsx'
import { Provenance } from './Provenance.tsx'
import { CurveOf } from './RecordedCurve.tsx'
import '../records/records.css'

/** One break: its curve, what was made of it, how far to trust it, where it comes from, and what people said about it. */
export function BreakPage({ breakId }: { breakId: number }) {
  const answer = useAnswer('breaks.get', { breakId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <BreakView record={answer.value} />
}

function BreakView({ record }: { record: BreakRecord }) {
  const { summary } = record
  const [dialog, setDialog] = useState<'set-aside' | 'take-back' | 'reassign' | 'assess' | 'again' | null>(null)
  const setAside = useAction('breaks.setAside')
  const takeBack = useAction('breaks.takeBack')
  const { verification } = summary
  const flags = summary.flags.filter((flag) => verification === null || !verifiedRangeFlags.includes(flag))
  const newest = record.evaluations.at(-1) ?? null
  const close = () => setDialog(null)
  const subject = summary.number ?? `break ${summary.breakId}`
  return (
    <div className="record-page">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
            {summary.specimenId === null ? null : (
              <a href={hashOf({ page: 'specimen', specimenId: summary.specimenId })}>Specimen {summary.number}</a>
            )}
          </p>
          <h1>
            {summary.number ?? 'A specimen without a number'} {outcomeWord(summary)}
          </h1>
          <p className="record-words">
            {instantWords(summary.startedAt)}
            {summary.adhesive === null ? '' : ` · ${summary.adhesive}`}
            {summary.demo ? ' · invented demo data' : ''}
          </p>
        </div>
        <div className="record-buttons">
          <button type="button" className="button" onClick={() => setDialog('assess')}>
            Describe the faces
          </button>
          <button type="button" className="button" disabled={newest === null} onClick={() => setDialog('again')}>
            Evaluate again
          </button>
          <button type="button" className="button" onClick={() => setDialog('reassign')}>
            Move to another specimen
          </button>
          <button
            type="button"
            className="button"
            onClick={() => setDialog(summary.setAside === null ? 'set-aside' : 'take-back')}
          >
            {summary.setAside === null ? 'Set aside' : 'Take back in'}
          </button>
        </div>
      </header>
      {summary.setAside === null ? null : (
        <p className="set-aside-words">
          <strong>Set aside, not used in results:</strong> {summary.setAside}
        </p>
      )}
      <div className="break-top">
        <CurveOf record={record} />
        <section className="break-figures" aria-labelledby="result-title">
          <h2 id="result-title" className="visually-hidden">
            Result
          </h2>
          <Figures record={record} />
        </section>
      </div>
      {record.evaluations.length > 1 ? (
        <section className="evaluations" aria-labelledby="evaluations-title">
          <h2 id="evaluations-title">Evaluations beside each other</h2>
          <EvaluationsTable record={record} />
        </section>
      ) : null}
      <div className="break-columns">
        <section aria-labelledby="numbers-title">
          <h2 id="numbers-title">Evaluation</h2>
          {newest === null ? (
            <p className="empty-words">Not evaluated yet.</p>
          ) : (
            <EvaluationNumbers evaluation={newest} />
          )}
        </section>
        <section aria-labelledby="doubts-title">
          <h2 id="doubts-title">To be read with</h2>
          {verification === null ? null : <VerificationWords verification={verification} />}
          <ul className="flag-list">
            {summary.flags.length === 0 ? <li>Nothing stands against this number.</li> : null}
            {flags.map((flag) => (
              <li key={flag}>{flagWords[flag]}</li>
            ))}
          </ul>
          <h2>Events on the curve</h2>
          <EventList evaluation={newest} />
        </section>
        <section aria-labelledby="provenance-title">
          <h2 id="provenance-title">Where it comes from</h2>
          <Provenance record={record} />
        </section>
        <section aria-labelledby="history-title">
          <h2 id="history-title">What people said</h2>
          <BreakHistory record={record} />
        </section>
      </div>
      {dialog === 'set-aside' || dialog === 'take-back' ? (
        <SignatureDialog
          kind={dialog}
          subject={subject}
          action={dialog === 'set-aside' ? setAside : takeBack}
          input={{ breakId: summary.breakId }}
          onClose={close}
        />
      ) : null}
      {dialog === 'reassign' ? <ReassignDialog summary={summary} onClose={close} /> : null}
      {dialog === 'again' ? <EvaluateAgainDialog record={record} onClose={close} /> : null}
      {dialog === 'assess' ? <AssessDialog summary={summary} onClose={close} /> : null}
    </div>
  )
}

function Figures({ record: { summary, evaluations } }: { record: BreakRecord }) {
  const { force, strength } = useQuantities()
  const bound = evaluations.at(-1)?.result.samplingBoundN ?? null
  return (
    <dl className="big-figures">
      <div>
        <dt>
          {summary.outcome === 'break' ? 'Peak load' : 'Highest load'}
          {isUncalibrated(summary.scaleKind) ? <span className="tag">uncalibrated</span> : null}
          {summary.verification === null ? null : (
            <a
              href={hashOf({ page: 'calibration-record', calibrationId: summary.verification.calibrationId })}
              title="The calibration that it was found with"
            >
              {summary.verification.name}
            </a>
          )}
        </dt>
        <dd>
          {force.number(summary.peakN)} <small>{force.unit}</small>
        </dd>
      </div>
      <div>
        <dt>Shear strength</dt>
        <dd>
          {strength.number(summary.strengthMPa)} <small>{strength.unit}</small>
        </dd>
      </div>
      <div>
        <dt>Sampling bound</dt>
        <dd className="medium-figure">
          {bound === null
            ? 'not known'
            : `+${force.text(bound)}${summary.samplingBoundPercent === null ? '' : ` (${writeNumber(summary.samplingBoundPercent, 2)} %)`}`}
        </dd>
        <dd className="figure-words">how far the true peak may lie above the highest sample</dd>
      </div>
      <div>
        <dt>Wood failure</dt>
        <dd className="medium-figure">
          {summary.woodFailurePercent === null ? 'not assessed' : `${summary.woodFailurePercent} %`}
        </dd>
      </div>
    </dl>
  )
}

function EvaluationNumbers({ evaluation: { result } }: { evaluation: Evaluation }) {
  const { force } = useQuantities()
  const seconds = (value: number | null) => (value === null ? '–' : `${writeFixed(value, 3)} s`)
  const rate = result.loadingRateNPerS
  const lines: [string, string][] = [
    ['Loading starts', seconds(result.onsetTimeS)],
    ['Peak', seconds(result.peakTimeS)],
    ['Break', seconds(result.breakTimeS)],
    ['Loading rate before the peak', rate === null ? '–' : `${force.number(rate)} ${force.unit}/s`],
    ['Load left after the break', force.text(result.afterBreakN)],
    ['Noise, SD', force.text(result.noiseN)],
    ['Sample rate', result.sampleRateHz === null ? '–' : `${writeNumber(result.sampleRateHz, 1)} Hz`],
    ['Samples', result.samples.toLocaleString('en')],
    ['Missing samples', result.missingSamples.toLocaleString('en')],
  ]
  return (
    <dl className="facts">
      {lines.map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}

function EventList({ evaluation }: { evaluation: Evaluation | null }) {
  const { force } = useQuantities()
  const events = evaluation?.result.events ?? []
  if (events.length === 0) return <p className="empty-words">None was found.</p>
  return (
    <ul className="event-list">
      {events.map((event) => (
        <li key={`${event.kind} ${event.startTimeS}`}>
          <strong>{eventNames[event.kind]}</strong> at {writeFixed(event.startTimeS, 3)} s
          {event.dropN === null ? '' : `, drop of ${force.text(event.dropN)}`}
          {event.dropPercent === null ? '' : ` (${writeFixed(event.dropPercent, 0)} %)`}
          {event.cycles === null ? '' : `, ${event.cycles} cycles`}
          <span className="quiet"> {eventWords[event.kind]}</span>
        </li>
      ))}
    </ul>
  )
}
