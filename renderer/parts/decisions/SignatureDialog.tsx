import { type FormEvent, type ReactNode, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Signature } from '#contract/signature.ts'
import { usePreferences } from '../../host/hostContext.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field, TextField } from '../../widgets/Field.tsx'
import { Notice } from '../../widgets/Notice.tsx'

/** Asks who decides and why. Nothing is deleted: the decision is added to the history. `children`: what is decided, above the two. */
export function SignatureDialog({
  title,
  explains,
  button,
  common,
  pending,
  error,
  onSign,
  onClose,
  children,
}: {
  title: string
  explains: string
  button: string
  /** Reasons that are often given. */
  common: readonly string[]
  pending: boolean
  error: TroubleMessage | null
  /** `signature` null: something is left out; what stands above may say so too. Resolves with true when the dialog is done. */
  onSign(signature: Signature | null): Promise<boolean>
  onClose(): void
  children?: ReactNode
}) {
  const { operator } = usePreferences()
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    const complete = by.trim() !== '' && reason.trim() !== ''
    if (await onSign(complete ? { by: by.trim(), reason: reason.trim() } : null)) onClose()
  }

  return (
    <Dialog title={title} onClose={onClose}>
      <form onSubmit={(event) => void submit(event)} noValidate className="form">
        <p>{explains}</p>
        {children}
        <TextField
          label="Why"
          required
          data-first-focus=""
          value={reason}
          maxLength={1000}
          onChange={(event) => setReason(event.currentTarget.value)}
          error={asked && reason.trim() === '' ? 'Say why; it stands in the record from now on.' : null}
        />
        <div className="chips">
          <span>Common:</span>
          {common.map((text) => (
            <button type="button" key={text} className="chip" onClick={() => setReason(text)}>
              {text}
            </button>
          ))}
        </div>
        <Field
          label="Who"
          required
          value={by}
          maxLength={200}
          onChange={(event) => setBy(event.currentTarget.value)}
          error={asked && by.trim() === '' ? 'Enter your name or initials.' : null}
        />
        <Notice trouble={error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={pending}>
            {pending ? 'Recording …' : button}
          </button>
        </div>
      </form>
    </Dialog>
  )
}
