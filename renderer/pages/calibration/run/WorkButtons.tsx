import { Keys } from '../../../widgets/Keys.tsx'
import type { WorkSteps } from './workSteps.ts'

/** What can be done now, each with its key. */
export function WorkButtons({
  steps,
  goOnWords,
  goOnPending,
  skipWords,
}: {
  steps: WorkSteps
  goOnWords: string
  goOnPending: boolean
  skipWords: string
}) {
  const { goOn, stop, repeat, skip, back } = steps
  return (
    <div className="work-buttons">
      {stop !== null ? (
        <button type="button" className="button button-large" onClick={stop}>
          Stop waiting <Keys keys="Esc" />
        </button>
      ) : (
        <button
          type="button"
          className="button button-primary button-large"
          disabled={goOnPending}
          onClick={() => goOn?.()}
        >
          {goOnWords} <Keys keys="Enter" />
        </button>
      )}
      <button type="button" className="button" disabled={repeat === null} onClick={() => repeat?.()}>
        Repeat <Keys keys="R" />
      </button>
      <button type="button" className="button" disabled={skip === null} onClick={() => skip?.()}>
        {skipWords} <Keys keys="N" />
      </button>
      <button type="button" className="button" disabled={back === null} onClick={() => back?.()}>
        Back <Keys keys="Bksp" />
      </button>
      <button type="button" className="button button-quiet work-end" onClick={steps.breakOff}>
        Break off <Keys keys="B" />
      </button>
    </div>
  )
}
