import { useState } from 'react'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Choice } from '../../../widgets/Choice.tsx'

const whats = [
  { value: 'run', label: 'This run only; it starts again from its zero' },
  { value: 'routine', label: 'The whole calibration' },
] as const

/** Ends a run or the routine before its end, with a reason. Every reading is kept and marked. */
export function BreakOffDialog({ onClose }: { onClose(): void }) {
  const breakOff = useAction('calibration.breakOff')
  const [what, setWhat] = useState<'run' | 'routine'>('run')
  return (
    <SignatureDialog
      title="Stop the calibration early"
      explains="All readings so far are kept, marked as stopped early."
      button="Stop early"
      cancel="Continue calibrating"
      who={null}
      whyMissing="Give a reason; it is kept with the readings."
      common={['a weight touched the frame', 'a weight fell', 'the bench was knocked', 'interrupted', 'wrong weight']}
      pending={breakOff.pending}
      error={breakOff.error}
      onSign={async (signature) =>
        signature !== null && (await breakOff.run({ what, reason: signature.reason })) !== null
      }
      onClose={onClose}
    >
      <Choice label="What is stopped" options={whats} value={what} onChange={(value) => setWhat(value)} />
    </SignatureDialog>
  )
}
