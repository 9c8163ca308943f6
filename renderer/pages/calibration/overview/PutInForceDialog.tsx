import { useAction } from '../../../host/useAction.ts'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'

/** Puts a calibration in force, or none, in somebody's name. Breaks that are stored keep theirs. */
export function PutInForceDialog({
  calibration,
  onClose,
}: {
  /** null: none, forces are uncalibrated from then on. */
  calibration: { calibrationId: number; name: string } | null
  onClose(): void
}) {
  const put = useAction('calibrations.putInForce')
  const calibrationId = calibration?.calibrationId ?? null
  return (
    <SignatureDialog
      title={calibration === null ? 'Use no calibration' : `Put in force: ${calibration.name}`}
      explains={
        calibration === null
          ? 'Forces come from the typed scale from now on, and every place that shows one says “uncalibrated”.'
          : 'The next break uses it and names it. Stored breaks keep theirs; each can be evaluated again.'
      }
      button={calibration === null ? 'Use no calibration' : 'Put in force'}
      why="optional"
      pending={put.pending}
      error={put.error}
      onSign={async (signature) => signature !== null && (await put.run({ calibrationId, ...signature })) !== null}
      onClose={onClose}
    />
  )
}
