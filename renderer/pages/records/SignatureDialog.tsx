import { type FormEvent, useState } from 'react'
import { usePreferences } from '#renderer/host/hostContext.ts'
import type { Action } from '#renderer/host/useAction.ts'
import { Dialog } from '#renderer/widgets/Dialog.tsx'
import { Field, TextField } from '#renderer/widgets/Field.tsx'
import { Notice } from '#renderer/widgets/Notice.tsx'

const kinds = {
  'set-aside': {
    title: 'Set aside',
    explains:
      'It stays in the archive with its curve, but is not used in results. You can take it back in at any time.',
    button: 'Set aside',
    common: ['specimen slipped', 'wrong block', 'fixture touched', 'loaded too fast', 'glue-up fault'],
  },
  'take-back': {
    title: 'Take back in',
    explains: 'It counts in results again. The earlier decision stays in its history.',
    button: 'Take back in',
    common: ['set aside by mistake', 'checked the curve'],
  },
} as const

/** Asks who decides and why. Nothing is deleted: the decision is added to the break's history. */
export function SignatureDialog({
  kind,
  subject,
  action,
  input,
  onClose,
}: {
  kind: keyof typeof kinds
  subject: string
  action: Action<'breaks.setAside'> | Action<'breaks.takeBack'>
  input: { breakId: number }
  onClose(): void
}) {
  const { operator } = usePreferences()
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  const words = kinds[kind]

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (by.trim() === '' || reason.trim() === '') return
    if ((await action.run({ ...input, by: by.trim(), reason: reason.trim() })) !== null) onClose()
  }

  return (
    <Dialog title={`${words.title}: ${subject}`} onClose={onClose}>
      <form onSubmit={(event) => void submit(event)} noValidate className="form">
        <p>{words.explains}</p>
        <TextField
          label="Why"
          required
          data-first-focus=""
          value={reason}
          maxLength={1000}
          onChange={(event) => setReason(event.currentTarget.value)}
          error={asked && reason.trim() === '' ? 'Say why; it stands beside the break from now on.' : null}
        />
        <div className="chips">
          <span>Common:</span>
          {words.common.map((text) => (
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
        <Notice trouble={action.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={action.pending}>
            {words.button}
          </button>
        </div>
      </form>
    </Dialog>
  )
}
