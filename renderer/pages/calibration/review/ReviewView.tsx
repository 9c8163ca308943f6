import { useState } from 'react'
import type { AssessmentChoices, RoutineState } from '#contract/calibration/calibrationRoutine.ts'
import { noteSentences } from '#words/calibration/noteWords.ts'
import { noUncertaintyWords } from '#words/calibration/uncertaintyWords.ts'
import { useAction } from '../../../host/useAction.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useSingleKeys } from '../../../parts/routing/singleKeys.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { AssessmentFigures } from '../record/AssessmentFigures.tsx'
import { AssessmentSummary } from '../record/AssessmentSummary.tsx'
import { BudgetTable } from '../record/BudgetTable.tsx'
import { StepTable } from '../record/StepTable.tsx'
import { BreakOffDialog } from '../run/BreakOffDialog.tsx'
import { JudgementFields } from './JudgementFields.tsx'
import { readResolution } from './reviewForm.ts'
import { SaveForm } from './SaveForm.tsx'
import './review.css'

/** All is read: how it is judged, what that gives, and keeping it. */
export function ReviewView({ state }: { state: RoutineState }) {
  const back = useAction('calibration.back')
  const invert = useAction('calibration.acceptInverted')
  const [breakingOff, setBreakingOff] = useState(false)
  const suggested = state.plan?.resolution ?? state.suggestedResolution
  const [degree, setDegree] = useState<AssessmentChoices['degree']>(null)
  const [throughZero, setThroughZero] = useState(false)
  const [fitOver, setFitOver] = useState<AssessmentChoices['fitOver']>('up')
  const [resolution, setResolution] = useState(suggested === null ? '' : String(Number(suggested.toPrecision(3))))
  const unit = state.readingUnit ?? 'counts'
  const readResolutionText = readResolution(resolution, unit)
  const choices: AssessmentChoices = {
    degree,
    throughZero,
    fitOver,
    invertedAccepted: state.invertedAccepted,
    resolution: 'error' in readResolutionText ? null : readResolutionText.resolution,
  }
  const answer = useAnswer('calibration.assess', choices)
  const judged = answer.value

  useSingleKeys((key) => {
    if (key === 'Backspace') void back.run({})
    else if (key.toLowerCase() === 'b') setBreakingOff(true)
    else return false
    return true
  })

  return (
    <div className="review">
      <div className="review-main">
        <header className="record-head">
          <div>
            <p className="record-words">All steps are read. Take the last weights off.</p>
            <h1>Result</h1>
          </div>
          <div className="record-buttons">
            <button type="button" className="button" onClick={() => void back.run({})}>
              Back to the last reading <Keys keys="Bksp" />
            </button>
            <button type="button" className="button button-quiet" onClick={() => setBreakingOff(true)}>
              Stop early <Keys keys="B" />
            </button>
          </div>
        </header>
        <Notice trouble={answer.error ?? back.error ?? invert.error}>
          {state.reversed && !state.invertedAccepted ? (
            <button type="button" className="button" onClick={() => void invert.run({ accepted: true })}>
              The cell is wired in reverse: reverse the sign
            </button>
          ) : null}
        </Notice>
        {judged === null ? null : (
          <>
            <AssessmentSummary assessment={judged.assessment} />
            <AssessmentFigures rows={judged.rows} assessment={judged.assessment} origin={null} />
            {judged.assessment.notes.length === 0 ? null : (
              <section aria-labelledby="notes-title">
                <h2 id="notes-title">Remarks</h2>
                <ul className="flag-list">
                  {noteSentences(judged.assessment).map((note) => (
                    <li key={note}>{note}</li>
                  ))}
                </ul>
              </section>
            )}
            <StepTable assessment={judged.assessment} />
            {judged.assessment.budget === null ? (
              <p className="quiet">{noUncertaintyWords}</p>
            ) : (
              <BudgetTable budget={judged.assessment.budget} />
            )}
          </>
        )}
      </div>
      <aside className="review-side" aria-label="Evaluate and save">
        <JudgementFields
          degree={degree}
          throughZero={throughZero}
          fitOver={fitOver}
          resolution={resolution}
          resolutionError={'error' in readResolutionText ? readResolutionText.error : null}
          unit={unit}
          suggested={state.suggestedResolution}
          down={state.plan?.decreasing ?? false}
          proposal={judged?.assessment.proposal ?? null}
          onDegree={setDegree}
          onThroughZero={setThroughZero}
          onFitOver={setFitOver}
          onResolution={setResolution}
        />
        <SaveForm
          choices={choices}
          ready={judged !== null && answer.error === null && !('error' in readResolutionText)}
        />
      </aside>
      {breakingOff ? <BreakOffDialog onClose={() => setBreakingOff(false)} /> : null}
    </div>
  )
}
