import { type FormEvent, useState } from 'react'
import { useAction } from '../../../host/useAction.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Dialog } from '../../../widgets/dialogs/Dialog.tsx'
import { TextField } from '../../../widgets/Field.tsx'
import { Notice } from '../../../widgets/Notice.tsx'

const whats = [
  { value: 'run', label: 'Only this run, and begin it anew' },
  { value: 'routine', label: 'The whole calibration' },
] as const
const common = ['a weight touched the frame', 'a weight fell', 'the bench was knocked', 'interrupted', 'wrong weight']

/** Ends a run or the routine before its end, with a reason. Every reading is kept and marked. */
export function BreakOffDialog({ onClose }: { onClose(): void }) {
  const breakOff = useAction('calibration.breakOff')
  const [what, setWhat] = useState<'run' | 'routine'>('run')
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault()
    setAsked(true)
    if (reason.trim() === '') return
    if ((await breakOff.run({ what, reason: reason.trim() })) !== null) onClose()
  }

  return (
    <Dialog title="Break off" onClose={onClose}>
      <form className="form" noValidate onSubmit={(event) => void submit(event)}>
        <p>All readings so far are kept, marked as broken off.</p>
        <Choice label="What is broken off" options={whats} value={what} onChange={(value) => setWhat(value)} />
        <TextField
          label="Why"
          required
          data-first-focus=""
          value={reason}
          maxLength={1000}
          onChange={(event) => setReason(event.currentTarget.value)}
          error={asked && reason.trim() === '' ? 'Say why; it stands beside the readings from now on.' : null}
        />
        <div className="chips">
          <span>Common:</span>
          {common.map((text) => (
            <button type="button" key={text} className="chip" onClick={() => setReason(text)}>
              {text}
            </button>
          ))}
        </div>
        <Notice trouble={breakOff.error} />
        <div className="dialog-buttons">
          <button type="button" className="button" onClick={onClose}>
            Go on calibrating
          </button>
          <button type="submit" className="button button-primary" disabled={breakOff.pending}>
            Break off
          </button>
        </div>
      </form>
    </Dialog>
  )
}
