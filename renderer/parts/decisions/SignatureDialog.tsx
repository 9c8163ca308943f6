import type { ReactNode } from 'react'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Signature } from '#contract/signature.ts'
import { CancelButton } from '../../widgets/dialogs/CancelButton.tsx'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Form } from '../../widgets/forms/Form.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { SignatureFields, type SignatureWords } from './SignatureFields.tsx'
import { type Asked, useSignature } from './signature.ts'

/** Asks who decides and why. Nothing is deleted: the decision is added to the history. `children`: what is decided, above the two. */
export function SignatureDialog({
  title,
  explains,
  button,
  cancel = 'Cancel',
  who = 'required',
  why = 'required',
  wide = false,
  place = wide ? 'wide' : 'plain',
  begunElsewhere = false,
  pending,
  error,
  onSign,
  onClose,
  children,
  ...words
}: {
  title: string
  explains?: string
  button: string
  cancel?: string
  who?: Asked['who']
  why?: Asked['why']
  /** For a case of many fields: the two questions then stand beside each other. */
  wide?: boolean
  /** beside: what is decided about stays in sight. */
  place?: 'plain' | 'wide' | 'beside'
  /** It opens with what was decided elsewhere and is kept nowhere yet. */
  begunElsewhere?: boolean
  pending: boolean
  error: TroubleMessage | null
  /**
   * `signature` null: something is left out; what stands above may say so too. What is not asked or left empty is ''.
   * Resolves with true when the dialog is done.
   */
  onSign(signature: Signature | null): Promise<boolean>
  onClose(): void
  children?: ReactNode
} & SignatureWords) {
  const draft = useSignature({ who, why })

  async function submit(): Promise<boolean> {
    draft.ask()
    const isDone = await onSign(draft.signature)
    if (isDone) onClose()
    return isDone
  }

  return (
    <Dialog title={title} onClose={onClose} width={place}>
      <Form onSubmit={submit} begunElsewhere={begunElsewhere}>
        {explains === undefined ? null : <p>{explains}</p>}
        {children}
        <SignatureFields draft={draft} asked={{ who, why }} words={words} beside={wide} />
        <Notice trouble={error} />
        <div className="dialog-buttons">
          <CancelButton>{cancel}</CancelButton>
          <button type="submit" className="button button-primary" aria-disabled={pending}>
            {pending ? 'Recording …' : button}
          </button>
        </div>
      </Form>
    </Dialog>
  )
}
