import { type FormEvent, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'
import { usePreferences } from '../../host/hostContext.ts'
import { useAction } from '../../host/useAction.ts'
import { useAnswer } from '../../host/useAnswer.ts'
import { Dialog } from '../../widgets/dialogs/Dialog.tsx'
import { Field } from '../../widgets/Field.tsx'
import { Notice } from '../../widgets/Notice.tsx'

/** Moves a break to the specimen it really was made of, or to none. */
export function ReassignDialog({ summary, onClose }: { summary: BreakSummary; onClose(): void }) {
  const { operator } = usePreferences()
  const reassign = useAction('breaks.reassign')
  const [text, setText] = useState('')
  const [target, setTarget] = useState<number | 'none' | null>(null)
  const [by, setBy] = useState(operator)
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  const found = useAnswer('specimens.list', { text, limit: 6 })

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (target === null || by.trim() === '' || reason.trim() === '') return
    const input = {
      breakId: summary.breakId,
      specimenId: target === 'none' ? null : target,
      by: by.trim(),
      reason: reason.trim(),
    }
    if ((await reassign.run(input)) !== null) onClose()
  }

  return (
    <Dialog title="Move this break to another specimen" onClose={onClose}>
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <Field
          label="Find the specimen"
          data-first-focus=""
          type="search"
          maxLength={1000}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
          error={asked && target === null ? 'Choose a specimen below, or none.' : null}
        />
        <fieldset className="pick-list">
          <legend className="visually-hidden">Specimen</legend>
          {(found.value?.rows ?? [])
            .filter((row) => row.specimenId !== summary.specimenId)
            .map((row) => (
              <label key={row.specimenId}>
                <input
                  type="radio"
                  name="specimen"
                  checked={target === row.specimenId}
                  onChange={() => setTarget(row.specimenId)}
                />
                <strong>{row.fields.number}</strong> <span className="quiet">{specimenWords(row.fields)}</span>
              </label>
            ))}
          {summary.specimenId === null ? null : (
            <label>
              <input type="radio" name="specimen" checked={target === 'none'} onChange={() => setTarget('none')} />
              No specimen
            </label>
          )}
        </fieldset>
        <Field
          label="Why"
          required
          value={reason}
          maxLength={1000}
          onChange={(event) => setReason(event.currentTarget.value)}
          error={asked && reason.trim() === '' ? 'Say why; it stands beside the break from now on.' : null}
        />
        <Field
          label="Who"
          required
          value={by}
          maxLength={200}
          onChange={(event) => setBy(event.currentTarget.value)}
          error={asked && by.trim() === '' ? 'Enter your name or initials.' : null}
        />
        <Notice trouble={found.error ?? reassign.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Cancel
          </button>
          <button type="submit" className="button button-primary" disabled={reassign.pending}>
            Move
          </button>
        </div>
      </form>
    </Dialog>
  )
}
