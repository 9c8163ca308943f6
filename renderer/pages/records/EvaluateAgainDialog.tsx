import { type FormEvent, useState } from 'react'
import type { BreakRecord } from '#contract/records/break.ts'
import { useAction } from '#renderer/host/useAction.ts'
import { useAnswer } from '#renderer/host/useAnswer.ts'
import { Dialog } from '#renderer/widgets/Dialog.tsx'
import { Notice } from '#renderer/widgets/Notice.tsx'
import { useQuantities } from '#renderer/widgets/quantities.ts'
import { classWords, dayWords, rangeText, signedNumber } from '../calibrationWords.ts'
import { hashOf } from '../frame/route.ts'

/** Chooses another calibration for a stored break. The result stands beside the ones before it, and is then in force. */
export function EvaluateAgainDialog({ record, onClose }: { record: BreakRecord; onClose(): void }) {
  const { force } = useQuantities()
  const list = useAnswer('calibrations.list', {})
  const again = useAction('breaks.evaluateAgain')
  const [chosen, setChosen] = useState<number | null>(null)
  const [asked, setAsked] = useState(false)
  const used = record.evaluations.at(-1)?.scale
  const rows = list.value ?? []
  const subject = record.summary.number ?? `break ${record.summary.breakId}`

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (chosen !== null) await again.run({ breakId: record.summary.breakId, calibrationId: chosen })
  }

  const done = again.value?.comparison ?? null
  if (done !== null && again.error === null)
    return (
      <Dialog title={`Evaluated again: ${subject}`} onClose={onClose}>
        <dl className="facts">
          <div>
            <dt>Peak before</dt>
            <dd>{force.text(done.peakBeforeN)}</dd>
          </div>
          <div>
            <dt>Peak now, in force</dt>
            <dd>
              <strong>{force.text(done.peakNowN)}</strong>
            </dd>
          </div>
          <div>
            <dt>Difference</dt>
            <dd>
              {signedNumber(done.differenceN === null ? null : done.differenceN * force.factor, 1)} {force.unit}
              {done.differencePercent === null ? '' : ` (${signedNumber(done.differencePercent, 2)} %)`}
            </dd>
          </div>
        </dl>
        <p>The result before it stays in the record.</p>
        <div className="dialog-buttons">
          <button type="button" className="button button-primary" data-first-focus="" onClick={onClose}>
            Close
          </button>
        </div>
      </Dialog>
    )
  return (
    <Dialog title={`Evaluate again: ${subject}`} onClose={onClose}>
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <p>The same raw curve under another calibration. Both results stay; the new one is then in force.</p>
        <Notice trouble={list.error} />
        {rows.length === 0 && !list.pending ? (
          <p>
            There is no calibration yet. <a href={hashOf({ page: 'calibration-run' })}>Calibrate first.</a>
          </p>
        ) : (
          <fieldset className="pick-list">
            <legend>Calibration</legend>
            {rows.map((row) => {
              const already = used?.kind === 'calibration' && used.calibrationId === row.calibrationId
              return (
                <label key={row.calibrationId} data-disabled={already ? '' : undefined}>
                  <input
                    type="radio"
                    name="calibration"
                    disabled={already}
                    checked={chosen === row.calibrationId}
                    onChange={() => setChosen(row.calibrationId)}
                  />
                  <strong>{row.name}</strong>{' '}
                  <span className="quiet">
                    {dayWords(row.madeAt)}, {classWords(row.class)}, {rangeText(row.verifiedRangeN, force)},{' '}
                    {row.device === 'virtual' ? 'virtual amplifier' : 'serial'}
                    {already ? '; the result in force was made with it' : ''}
                  </span>
                </label>
              )
            })}
          </fieldset>
        )}
        {asked && chosen === null ? <p className="field-error">Choose a calibration.</p> : null}
        <Notice trouble={again.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={again.pending || rows.length === 0}>
            Evaluate again
          </button>
        </div>
      </form>
    </Dialog>
  )
}
