import type { BreakRecord } from '#contract/breaks/break.ts'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { firstEarlyDrop, prematureIndex, prematureStretch } from '#domain/signal/events/prematureLoad.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { peakStaysWords } from '#words/breaks/decisionWords.ts'
import { writeFixed } from '#words/units/numbers.ts'
import { useAction } from '../../../../host/useAction.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { SignatureDialog } from '../../../../parts/decisions/SignatureDialog.tsx'
import { Notice } from '../../../../widgets/Notice.tsx'
import { BeforeAfter } from './BeforeAfter.tsx'

type Props = { record: BreakRecord; onClose(): void }

/** Lets the load before the first early drop stand for the failure. */
export function PrematureDialog({ record, onClose }: Props) {
  const declare = useAction('breaks.declarePremature')
  const { breakId, number, areaMm2 } = record.summary
  const events = resultInForce(record)?.result.events ?? []
  const drop = firstEarlyDrop(events)
  // The unthinned samples, and the rule by which the decision is recorded.
  const curve = useAnswer(
    'breaks.curve',
    drop === null ? null : { breakId, ...prematureStretch(drop), maxPoints: null },
  )
  if (drop === null) return null
  const name = drop.kind === 'stick-slip' ? 'the first drop of the stick-slip' : 'the pop-in'
  return (
    <SignatureDialog
      place="beside"
      title={`Premature failure: ${number ?? `break ${breakId}`}`}
      explains={`The load before ${name} at ${writeFixed(drop.startTimeS, 3)} s will count as the failure load, wherever the result is used. ${peakStaysWords}`}
      button="Declare it"
      common={['the joint cracked there', 'the bond had failed before the peak']}
      pending={declare.pending}
      error={declare.error}
      onSign={async (signature) => signature !== null && (await declare.run({ breakId, ...signature })) !== null}
      onClose={onClose}
    >
      <Notice trouble={curve.error} />
      <BeforeAfter now={record.summary} thenAreaMm2={areaMm2} {...loadThen(events, curve.value)} />
    </SignatureDialog>
  )
}

/** The load that will count, or why none can be named. */
function loadThen(events: readonly CurveEvent[], curve: ForceCurve | null): { thenN: number | null; unknown: string } {
  if (curve === null) return { thenN: null, unknown: 'reading the curve …' }
  if (curve.unit === 'counts') return { thenN: null, unknown: 'counts: there is no scale' }
  const thenN = curve.force[prematureIndex(events, curve.timeS, curve.force)] ?? null
  return { thenN, unknown: 'the curve has no sample there' }
}

/** Takes a person's word back: the peak that the program found counts again. */
export function PeakAsFoundDialog({ record, onClose }: Props) {
  const asFound = useAction('breaks.peakAsFound')
  const { breakId, number, areaMm2, overruled } = record.summary
  // An unloading has a load, but no strength.
  const foundBreak = resultInForce(record)?.result.outcome === 'break'
  return (
    <SignatureDialog
      place="beside"
      title={`Use the peak found: ${number ?? `break ${breakId}`}`}
      explains="The peak that the program found counts again. The earlier decision stays in the history."
      button="Take it back"
      common={['picked by mistake', 'looked at the curve again']}
      pending={asFound.pending}
      error={asFound.error}
      onSign={async (signature) => signature !== null && (await asFound.run({ breakId, ...signature })) !== null}
      onClose={onClose}
    >
      <BeforeAfter
        now={record.summary}
        thenN={overruled?.foundPeakN ?? null}
        thenAreaMm2={foundBreak ? areaMm2 : null}
        unknown="not known"
      />
    </SignatureDialog>
  )
}
