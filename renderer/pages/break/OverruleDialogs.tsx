import type { BreakRecord } from '#contract/records/break.ts'
import { useAction } from '#renderer/host/useAction.ts'
import { writeFixed } from '#renderer/widgets/quantities.ts'
import { SignatureDialog } from '../records/SignatureDialog.tsx'
import { eventNames } from '../wording.ts'
import { BeforeAfter } from './BeforeAfter.tsx'
import { earlyDrop, evaluationInForce } from './evaluationInForce.ts'

type Props = { record: BreakRecord; onClose(): void }

/** Lets the load before the first early drop stand for the failure. */
export function PrematureDialog({ record, onClose }: Props) {
  const declare = useAction('breaks.declarePremature')
  const { breakId, number, peakN, areaMm2 } = record.summary
  const result = evaluationInForce(record)?.result ?? null
  const drop = result === null ? null : earlyDrop(result)
  if (drop === null) return null
  const name = drop.kind === 'stick-slip' ? 'the first drop of the stick-slip' : 'the pop-in'
  return (
    <SignatureDialog
      title={`Premature failure: ${number ?? `break ${breakId}`}`}
      explains={`The load before ${name} at ${writeFixed(drop.startTimeS, 3)} s will count as the failure load, wherever the result is used. The curve and the peak as found stay in the record, and you can take this back at any time.`}
      button="Declare it"
      common={['the joint cracked there', 'the bond had failed before the peak']}
      pending={declare.pending}
      error={declare.error}
      onSign={async (signature) => signature !== null && (await declare.run({ breakId, ...signature })) !== null}
      onClose={onClose}
    >
      <BeforeAfter
        nowN={peakN}
        thenN={drop.fromN}
        areaMm2={areaMm2}
        unknown={`the load before the ${eventNames[drop.kind].toLowerCase()}, read from the curve`}
      />
    </SignatureDialog>
  )
}

/** Takes a person's word back: the peak that the program found counts again. */
export function PeakAsFoundDialog({ record, onClose }: Props) {
  const asFound = useAction('breaks.peakAsFound')
  const { breakId, number, peakN, areaMm2, overruled } = record.summary
  return (
    <SignatureDialog
      title={`Peak as found again: ${number ?? `break ${breakId}`}`}
      explains="The peak that the program found counts again. The earlier decision stays in the history."
      button="Take it back"
      common={['picked by mistake', 'looked at the curve again']}
      pending={asFound.pending}
      error={asFound.error}
      onSign={async (signature) => signature !== null && (await asFound.run({ breakId, ...signature })) !== null}
      onClose={onClose}
    >
      <BeforeAfter nowN={peakN} thenN={overruled?.foundPeakN ?? null} areaMm2={areaMm2} unknown="not known" />
    </SignatureDialog>
  )
}
