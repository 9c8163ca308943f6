import { useState } from 'react'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'
import { changedWords } from '#words/breaks/thresholdWords.ts'
import {
  type DecisionKind,
  decidedWords,
  dialogWords,
  meaningWords,
  titleWords,
} from '#words/reevaluation/decisionWords.ts'
import { standingOf } from '#words/reevaluation/standing.ts'
import { instantWords } from '#words/units/times.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { SignatureDialog } from '../../parts/decisions/SignatureDialog.tsx'
import { hashOf } from '../../routes/route.ts'
import { Notice } from '../../widgets/Notice.tsx'
import { Changes } from './changes/Changes.tsx'
import { ProblemList } from './changes/ProblemList.tsx'
import { RunningProgress } from './RunningProgress.tsx'
import { StandingTag } from './StandingTag.tsx'
import { useCalibrationNames } from './useCalibrationNames.ts'
import { useDone } from './useRunning.ts'
import './reevaluation.css'

/** One re-evaluation: how far it is, what it changed, and the decision on it. */
export function ReevaluationPage({ reevaluationId }: { reevaluationId: number }) {
  const answer = useAnswer('reevaluations.get', { reevaluationId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
      </div>
    )
  return <ReevaluationView summary={answer.value} />
}

function ReevaluationView({ summary }: { summary: ReevaluationSummary }) {
  const { reevaluationId, end, decisions } = summary
  const quantities = useQuantities()
  const nameOf = useCalibrationNames()
  const done = useDone(summary)
  const decide = useAction('reevaluations.decide')
  const [dialog, setDialog] = useState<DecisionKind | null>(null)
  const standing = standingOf(summary)
  const changed = changedWords(summary.settings, quantities)
  return (
    <div className="reevaluation">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'breaks' })}>Breaks</a>
            <a href={hashOf({ page: 'reevaluations' })}>Re-evaluations</a>
          </p>
          <h1 className="reevaluation-title">
            {titleWords(summary)} <StandingTag summary={{ ...summary, evaluated: done }} />
          </h1>
          <p className="record-words">
            {instantWords(summary.begunAt)} by {summary.by} · calibration: {nameOf(summary.calibrationId)} ·{' '}
            {changed.length === 0 ? 'settings as recorded' : changed.join(', ')} · {summary.method}
          </p>
        </div>
        <div className="record-buttons">
          {standing === 'running' || summary.evaluated === 0 ? null : standing === 'adopted' ? (
            <button type="button" className="button" onClick={() => setDialog('dropped')}>
              Take out of force again
            </button>
          ) : (
            <>
              {decisions.length > 0 ? null : (
                <button type="button" className="button" onClick={() => setDialog('dropped')}>
                  Do not adopt
                </button>
              )}
              <button type="button" className="button button-primary" onClick={() => setDialog('adopted')}>
                Adopt these results
              </button>
            </>
          )}
        </div>
      </header>
      {end === null ? (
        <RunningProgress done={done} total={summary.breaks} />
      ) : (
        <>
          <p className="meaning">{meaningWords(summary)}</p>
          <ProblemList problems={end.problems} />
          <DecisionList decisions={decisions} />
          {summary.evaluated === 0 ? null : <Changes reevaluationId={reevaluationId} />}
        </>
      )}
      {dialog === null ? null : (
        <SignatureDialog
          {...dialogWords(dialog, summary)}
          onSign={async (signature) =>
            signature !== null && (await decide.run({ reevaluationId, kind: dialog, ...signature })) !== null
          }
          pending={decide.pending}
          error={decide.error}
          onClose={() => {
            decide.dismiss()
            setDialog(null)
          }}
        />
      )}
    </div>
  )
}

function DecisionList({ decisions }: { decisions: ReevaluationSummary['decisions'] }) {
  if (decisions.length === 0) return null
  return (
    <ol className="reevaluation-decisions" aria-label="Decisions, newest first">
      {decisions.toReversed().map((one, index) => (
        <li key={one.reevaluationDecisionId}>
          <strong>{decidedWords(decisions, decisions.length - 1 - index)}</strong> on {instantWords(one.recordedAt)} by{' '}
          {one.by}: {one.reason}
        </li>
      ))}
    </ol>
  )
}
