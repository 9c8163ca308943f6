import { askForName } from '#words/settings/signatureWords.ts'
import { Field, TextField } from '../../widgets/Field.tsx'
import type { Asked, SignatureDraft } from './signature.ts'
import './signatureFields.css'

export type SignatureWords = {
  /** How the reason is asked for. */
  whyLabel?: string
  /** What is said while the reason is missing. */
  whyMissing?: string
  /** Reasons that are often given. */
  common?: readonly string[]
}

/** The two questions of every decision: why, and who. `beside`: in one line, below many fields of the case. */
export function SignatureFields({
  draft,
  asked,
  words: { whyLabel = 'Reason', whyMissing = 'Give a reason; it is kept in the record.', common = [] },
  beside = false,
}: {
  draft: SignatureDraft
  asked: Asked
  words: SignatureWords
  beside?: boolean
}) {
  const { by, reason, missing, setBy, setReason } = draft
  const why = {
    label: whyLabel,
    required: asked.why === 'required',
    value: reason,
    maxLength: 1000,
    error: missing.why ? whyMissing : null,
    onChange: (event: { currentTarget: { value: string } }) => setReason(event.currentTarget.value),
  }
  const who =
    asked.who === null ? null : (
      <Field
        label="Name or initials"
        required={asked.who === 'required'}
        value={by}
        maxLength={200}
        onChange={(event) => setBy(event.currentTarget.value)}
        error={missing.who ? askForName : null}
      />
    )
  if (beside)
    return (
      <div className="signature-fields">
        <Field {...why} />
        {who}
      </div>
    )
  return (
    <>
      {asked.why === null ? null : <TextField {...why} data-first-focus="" />}
      {common.length === 0 ? null : (
        <div className="chips">
          <span>Common:</span>
          {common.map((text) => (
            <button type="button" key={text} className="chip" onClick={() => setReason(text)}>
              {text}
            </button>
          ))}
        </div>
      )}
      {who}
    </>
  )
}
