import { useEffect, useState } from 'react'
import type { CheckState } from '#contract/calibration/checkWeight.ts'
import { unusedWords } from '#words/calibration/unusedWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useEvent } from '../../../host/useEvent.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { CheckCharts } from './CheckCharts.tsx'
import { CheckStart } from './CheckStart.tsx'
import { CheckWork } from './CheckWork.tsx'
import './checkWeight.css'

/** One known weight before a session: a minute that says whether the bench is still the one that was calibrated. */
export function CheckWeightPage() {
  const bench = useBench()
  const answer = useAnswer('checkWeight.state', {})
  const history = useAnswer('checkWeight.history', bench.calibration === null ? null : { calibrationId: null })
  const [state, setState] = useState<CheckState | null>(null)
  useEffect(() => {
    if (answer.value !== null) setState(answer.value)
  }, [answer.value])
  useEvent('checkWeight.state', setState)
  return (
    <div className="check">
      <header className="record-head">
        <div>
          <p className="crumb">
            <a href={hashOf({ page: 'calibration' })}>Calibration</a>
          </p>
          <h1>Check weight</h1>
        </div>
      </header>
      <Notice trouble={answer.error ?? history.error ?? unreadableTrouble(history.value?.unreadable)} />
      {bench.calibration === null ? (
        <div className="empty-start">
          <p>
            {bench.calibrationUnused === null
              ? 'A check compares the bench with its calibration, and none is in force.'
              : unusedWords(bench.calibrationUnused)}
          </p>
          <a className="button button-primary" href={hashOf({ page: 'calibration-run' })}>
            Calibrate
          </a>
        </div>
      ) : (
        <div className="check-columns">
          {state === null ? (
            <section className="check-now" />
          ) : state.phase === 'idle' || state.phase === 'done' ? (
            <CheckStart state={state} calibration={bench.calibration.name} />
          ) : (
            <CheckWork state={state} />
          )}
          <CheckCharts histories={history.value?.rows ?? []} pending={history.pending} />
        </div>
      )}
    </div>
  )
}
