import { type FormEvent, type ReactNode, useState } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import { usePreferences } from '#renderer/host/hostContext.ts'
import { Dialog } from '#renderer/widgets/Dialog.tsx'
import { Field, TextField } from '#renderer/widgets/Field.tsx'
import { Notice } from '#renderer/widgets/Notice.tsx'

export type SignedWords = {
  title: string
  /** What it means, and that it can be taken back. */
  explains: ReactNode
  button: string
  /** Reasons that are given often. */
  common: readonly string[]
  /** What is said when the reason is missing. */
  reasonMissing: string
}

/** Asks who decides and why, and closes once the decision is recorded. `sign` resolves with false when it was not. */
export function SignedDialog({
  words,
  sign,
  pending,
  error,
  onClose,
  children,
}: {
  words: SignedWords
  sign(signature: { by: string; reason: string }): Promise<boolean>
  pending: boolean
  error: TroubleMessage | null
  onClose(): void
  /** Whatever else is asked; stands above the reason. */
  children?: ReactNode
}) {
  const { operator } = usePreferences()
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (by.trim() === '' || reason.trim() === '') return
    if (await sign({ by: by.trim(), reason: reason.trim() })) onClose()
  }

  return (
    <Dialog title={words.title} onClose={onClose}>
      <form onSubmit={(event) => void submit(event)} noValidate className="form">
        <p>{words.explains}</p>
        {children}
        <TextField
          label="Why"
          required
          data-first-focus=""
          value={reason}
          maxLength={1000}
          onChange={(event) => setReason(event.currentTarget.value)}
          error={asked && reason.trim() === '' ? words.reasonMissing : null}
        />
        {words.common.length === 0 ? null : (
          <div className="chips">
            <span>Common:</span>
            {words.common.map((text) => (
              <button type="button" key={text} className="chip" onClick={() => setReason(text)}>
                {text}
              </button>
            ))}
          </div>
        )}
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
            {words.button}
          </button>
        </div>
      </form>
    </Dialog>
  )
}
