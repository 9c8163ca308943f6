import { type FormEvent, useState } from 'react'
import { usePreferences } from '../../../host/hostContext.ts'
import { useAction } from '../../../host/useAction.ts'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { Field, TextField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'

/** Puts a calibration in force, or none, in somebody's name. Breaks that are stored keep theirs. */
export function PutInForceDialog({
  calibration,
  onClose,
}: {
  /** null: none, forces are uncalibrated from then on. */
  calibration: { calibrationId: number; name: string } | null
  onClose(): void
}) {
  const { operator } = usePreferences()
  const put = useAction('calibrations.putInForce')
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (by.trim() === '') return
    const calibrationId = calibration?.calibrationId ?? null
    if ((await put.run({ calibrationId, by: by.trim(), reason: reason.trim() })) !== null) onClose()
  }

  return (
    <Dialog title={calibration === null ? 'Use no calibration' : `Put in force: ${calibration.name}`} onClose={onClose}>
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <p>
          {calibration === null
            ? 'Forces come from the typed scale from now on, and every place that shows one says “uncalibrated”.'
            : 'The next break is found with it and names it. Breaks that are stored keep theirs; each can be evaluated again.'}
        </p>
        <TextField
          label="Why"
          value={reason}
          maxLength={1000}
          data-first-focus=""
          onChange={(event) => setReason(event.currentTarget.value)}
        />
        <Field
          label="Who"
          required
          value={by}
          maxLength={200}
          onChange={(event) => setBy(event.currentTarget.value)}
          error={asked && by.trim() === '' ? 'Enter your name or initials.' : null}
        />
        <Notice trouble={put.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={put.pending}>
            {calibration === null ? 'Use none' : 'Put in force'}
          </button>
        </div>
      </form>
    </Dialog>
  )
}
