import { useState } from 'react'
import { leftOut } from '#contract/keeping/unreadable.ts'
import { progressWords } from '#words/calibration/routine/routineWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { useBench } from '../../../host/hostContext.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { useRoutine } from '../run/useRoutine.ts'
import { BrokenOffList } from './BrokenOffList.tsx'
import { CalibrationList } from './CalibrationList.tsx'
import { DriftFigures } from './DriftFigures.tsx'
import { InForce } from './InForce.tsx'
import { PutInForceDialog } from './PutInForceDialog.tsx'
import './calibration.css'

/** What the force rests on: the calibration in force, what can be done about it, and how it went over the years. */
export function CalibrationPage() {
  const bench = useBench()
  const list = useAnswer('calibrations.list', {})
  const history = useAnswer('calibrations.history', {})
  const { state } = useRoutine()
  const [usingNone, setUsingNone] = useState(false)
  const rows = list.value?.rows ?? []
  const unreadable = unreadableTrouble(leftOut(list.value ?? {}, history.value ?? {}).unreadable)
  const inForce = rows.find((row) => row.calibrationId === bench.calibration?.calibrationId) ?? null
  const running = state !== null && state.phase !== 'planning'
  return (
    <div className="calibration-page">
      <header className="record-head">
        <h1>Calibration</h1>
        <div className="record-buttons">
          {bench.calibration === null ? null : (
            <button type="button" className="button button-quiet" onClick={() => setUsingNone(true)}>
              Use no calibration
            </button>
          )}
          <a className="button" href={hashOf({ page: 'weights' })}>
            Weights
          </a>
          <a className="button" href={hashOf({ page: 'check-weight' })}>
            Check weight
          </a>
          <a className="button button-primary" href={hashOf({ page: 'calibration-run' })}>
            {running ? 'Continue calibrating' : 'Calibrate'}
          </a>
        </div>
      </header>
      <Notice trouble={list.error ?? history.error ?? unreadable} />
      {running ? (
        <p className="running-words">
          <strong>A calibration is under way:</strong>{' '}
          {state.phase === 'review' ? 'all steps are read, nothing is saved yet.' : `${progressWords(state)}.`} No break
          is recorded meanwhile.
        </p>
      ) : null}
      <InForce bench={bench} summary={inForce} />
      {rows.length === 0 && !list.pending && unreadable === null ? <FirstWords /> : null}
      {rows.length > 0 ? <CalibrationList rows={rows} drift={history.value?.drift ?? []} /> : null}
      {history.value !== null && history.value.drift.length > 1 ? <DriftFigures drift={history.value.drift} /> : null}
      {history.value !== null && history.value.brokenOff.length > 0 ? (
        <BrokenOffList routines={history.value.brokenOff} />
      ) : null}
      {usingNone ? <PutInForceDialog calibration={null} onClose={() => setUsingNone(false)} /> : null}
    </div>
  )
}

function FirstWords() {
  return (
    <ol className="first-words">
      <li>
        <strong>Weights.</strong> Enter the weights you have and how accurate each one is.
      </li>
      <li>
        <strong>Steps.</strong> Enter where the bench stands and which weights are hung together; the program works out
        the forces.
      </li>
      <li>
        <strong>Hang and read.</strong> The program waits until each reading is steady, averages it, and shows at once
        whether it fits.
      </li>
      <li>
        <strong>Result.</strong> Class, verified range and uncertainty, with every reading kept.
      </li>
    </ol>
  )
}
