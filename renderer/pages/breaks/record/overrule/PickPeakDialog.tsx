import { useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { peakStaysWords } from '#words/breaks/decisionWords.ts'
import { writeFixed, writeNumber } from '#words/units/numbers.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import { useAction } from '../../../../host/useAction.ts'
import { useAnswer } from '../../../../host/useAnswer.ts'
import { SignatureDialog } from '../../../../parts/decisions/SignatureDialog.tsx'
import { Field } from '../../../../widgets/Field.tsx'
import { Notice } from '../../../../widgets/Notice.tsx'
import { BeforeAfter } from './BeforeAfter.tsx'
import { sampleAt } from './sampleAt.ts'

/** Puts a sample in place of the peak that was found: the one under the cursor, or the one nearest to a typed time. */
export function PickPeakDialog({
  record,
  startTimeS,
  onClose,
}: {
  record: BreakRecord
  startTimeS: number | null
  onClose(): void
}) {
  const pick = useAction('breaks.pickPeak')
  const { breakId, number, areaMm2 } = record.summary
  const [typed, setTyped] = useState(startTimeS === null ? '' : String(Number(startTimeS.toFixed(6))))
  const [asked, setAsked] = useState(false)
  const read = readQuantity(typed, { unit: 's', factor: 1 }, 'seconds of the curve, as in 12.345')
  const timeS = 'error' in read ? null : read.stored
  const sample = useSampleAt(record, timeS)
  const { found } = sample
  const problem =
    'error' in read
      ? read.error
      : timeS === null
        ? asked
          ? 'Write the time of the sample.'
          : null
        : found === null && !sample.pending
          ? 'There is no sample within a second of that time: look where the curve begins and ends.'
          : null
  return (
    <SignatureDialog
      place="beside"
      title={`Pick the peak by hand: ${number ?? `break ${breakId}`}`}
      explains={`The load of this sample will count as the peak, wherever the result is used, and will be marked as picked by hand. ${peakStaysWords}`}
      button="Take this sample"
      common={['the peak found is a disturbance', 'the joint failed here']}
      pending={pick.pending}
      error={pick.error}
      onSign={async (signature) => {
        setAsked(true)
        if (signature === null || found === null) return false
        return (await pick.run({ breakId, timeS: found.timeS, ...signature })) !== null
      }}
      onClose={onClose}
    >
      <Field
        label="Time of the sample"
        unit="s"
        required
        value={typed}
        {...(startTimeS === null ? { 'data-first-focus': '' } : {})}
        onChange={(event) => setTyped(event.currentTarget.value)}
        error={problem}
        hint={
          found === null
            ? 'The sample nearest to it is taken.'
            : `The sample at ${writeFixed(found.timeS, 4)} s${found.unit === 'counts' ? `, ${writeNumber(found.force, 0)} counts` : ''}.`
        }
      />
      <Notice trouble={sample.error} />
      <BeforeAfter
        now={record.summary}
        thenN={found === null || found.unit === 'counts' ? null : found.force}
        thenAreaMm2={areaMm2}
        unknown={
          found === null
            ? sample.pending
              ? 'reading the curve …'
              : 'write a time of the curve'
            : 'counts: there is no scale'
        }
      />
    </SignatureDialog>
  )
}

/** The sample of the raw curve nearest to a time; looked for within a second of it. */
function useSampleAt(record: BreakRecord, timeS: number | null) {
  const rateHz = resultInForce(record)?.result.sampleRateHz ?? 80
  const aboutS = Math.min(Math.max(4 / rateHz, 0.02), 1)
  const { breakId } = record.summary
  const stretch = (reachS: number) =>
    timeS === null ? null : { breakId, fromS: timeS - reachS, toS: timeS + reachS, maxPoints: null }
  const close = useAnswer('breaks.curve', stretch(aboutS))
  // Samples may be missing there
  const empty = close.value !== null && !close.pending && close.value.timeS.length === 0
  const wide = useAnswer('breaks.curve', empty ? stretch(1) : null)
  const answer = empty ? wide : close
  const curve = timeS === null || answer.pending ? null : answer.value
  const found = curve === null || timeS === null ? null : sampleAt(curve, timeS)
  return { found, pending: timeS !== null && answer.pending, error: answer.error }
}
