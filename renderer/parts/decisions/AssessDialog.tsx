import { type FormEvent, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { usePreferences } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field, TextField } from '../../widgets/Field.tsx'
import { Notice } from '../../widgets/Notice.tsx'
import { FailurePatternChoice } from '../assessment/FailurePatternChoice.tsx'
import { WoodFailure } from '../assessment/WoodFailure.tsx'
import { emptyEntry } from '../assessment/woodFailureEntry.ts'

/** Describes the broken faces, or describes them anew: the description before stays in the history. */
export function AssessDialog({ summary, onClose }: { summary: BreakSummary; onClose(): void }) {
  const { operator } = usePreferences()
  const assess = useAction('breaks.assess')
  const [entry, setEntry] = useState({ ...emptyEntry, percent: summary.woodFailurePercent })
  const [failurePattern, setPattern] = useState(summary.failurePattern)
  const [note, setNote] = useState(summary.note)
  const [by, setBy] = useState(operator)

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    const input = { breakId: summary.breakId, woodFailurePercent: entry.percent, failurePattern, note: note.trim(), by }
    if ((await assess.run(input)) !== null) onClose()
  }

  return (
    <Dialog title={`The faces of ${summary.number ?? `break ${summary.breakId}`}`} onClose={onClose}>
      <form className="form" onSubmit={(event) => void submit(event)}>
        <WoodFailure entry={entry} onEntry={setEntry} />
        <FailurePatternChoice value={failurePattern} onChange={setPattern} />
        <TextField
          label="Note"
          value={note}
          maxLength={4000}
          onChange={(event) => setNote(event.currentTarget.value)}
        />
        <Field label="Who" value={by} maxLength={200} onChange={(event) => setBy(event.currentTarget.value)} />
        <Notice trouble={assess.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={assess.pending}>
            Save
          </button>
        </div>
      </form>
    </Dialog>
  )
}
