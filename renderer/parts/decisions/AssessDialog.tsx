import { useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { useAction } from '../../host/useAction.ts'
import { TextField } from '../../widgets/Field.tsx'
import { FailurePatternChoice } from '../assessment/FailurePatternChoice.tsx'
import { WoodFailure } from '../assessment/WoodFailure.tsx'
import { emptyEntry } from '../assessment/woodFailureEntry.ts'
import { SignatureDialog } from './SignatureDialog.tsx'

/** Describes the broken faces, or describes them anew: the description before stays in the history. */
export function AssessDialog({
  summary,
  decidedPercent = null,
  onClose,
}: {
  summary: BreakSummary
  /** Wood failure that was decided just before, from a picture. */
  decidedPercent?: number | null
  onClose(): void
}) {
  const assess = useAction('breaks.assess')
  const [entry, setEntry] = useState({ ...emptyEntry, percent: decidedPercent ?? summary.woodFailurePercent })
  const [failurePattern, setPattern] = useState(summary.failurePattern)
  const [note, setNote] = useState(summary.note)
  return (
    <SignatureDialog
      title={`The faces of ${summary.number ?? `break ${summary.breakId}`}`}
      button="Save"
      who="optional"
      why={null}
      begunElsewhere={decidedPercent !== null && decidedPercent !== summary.woodFailurePercent}
      pending={assess.pending}
      error={assess.error}
      onSign={async (signature) => {
        const faces = { woodFailurePercent: entry.percent, failurePattern, note: note.trim() }
        return (await assess.run({ breakId: summary.breakId, ...faces, by: signature?.by ?? '' })) !== null
      }}
      onClose={onClose}
    >
      <WoodFailure entry={entry} onEntry={setEntry} />
      <FailurePatternChoice value={failurePattern} onChange={setPattern} />
      <TextField label="Note" value={note} maxLength={4000} onChange={(event) => setNote(event.currentTarget.value)} />
    </SignatureDialog>
  )
}
