import { useState } from 'react'
import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { Choice } from '../../../widgets/Choice.tsx'

const whats = [
  { value: 'run', label: 'Only this run, and begin it anew' },
  { value: 'routine', label: 'The whole calibration' },
] as const

/** Ends a run or the routine before its end, with a reason. Every reading is kept and marked. */
export function BreakOffDialog({ onClose }: { onClose(): void }) {
  const breakOff = useAction('calibration.breakOff')
  const [what, setWhat] = useState<'run' | 'routine'>('run')
  return (
    <SignatureDialog
      title="Break off"
      explains="All readings so far are kept, marked as broken off."
      button="Break off"
      cancel="Go on calibrating"
      who={null}
      whyMissing="Say why; it stands beside the readings from now on."
      common={['a weight touched the frame', 'a weight fell', 'the bench was knocked', 'interrupted', 'wrong weight']}
      pending={breakOff.pending}
      error={breakOff.error}
      onSign={async (signature) =>
        signature !== null && (await breakOff.run({ what, reason: signature.reason })) !== null
      }
      onClose={onClose}
    >
      <Choice label="What is broken off" options={whats} value={what} onChange={(value) => setWhat(value)} />
    </SignatureDialog>
  )
}
