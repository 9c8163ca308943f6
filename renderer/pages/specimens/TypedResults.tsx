import { useState } from 'react'
import type { SpecimenRecord } from '#contract/specimens/specimenRecord.ts'
import type { TypedResultSummary, TypedSetAsideCause } from '#contract/specimens/typedResult.ts'
import { peakOnlyMeaning, typedSetAsideWords, typedSourceWords } from '#words/specimens/typedResultWords.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
import { percentText } from '#words/units/numbers.ts'
import { useAction } from '../../host/useAction.ts'
import { useQuantities } from '../../host/useQuantities.ts'
import { SignatureDialog } from '../../parts/decisions/SignatureDialog.tsx'
import { DialDialog } from './DialDialog.tsx'
import { TypedAsideChoice } from './TypedAsideChoice.tsx'

/** The results of a specimen that have no curve: where each comes from, whether it counts, and typing one from a dial. */
export function TypedResults({ record }: { record: SpecimenRecord }) {
  const { current, typedResults } = record
  const [typing, setTyping] = useState(false)
  const [deciding, setDeciding] = useState<TypedResultSummary | null>(null)
  return (
    <>
      <div className="section-head">
        <h2>Results without a curve</h2>
        <button type="button" className="button" onClick={() => setTyping(true)}>
          Type a dial reading
        </button>
      </div>
      {typedResults.length === 0 ? null : (
        <>
          <p className="quiet">{peakOnlyMeaning}</p>
          <ol className="break-lines typed-lines">
            {typedResults.toReversed().map((result) => (
              <TypedResultLine
                key={result.typedResultId}
                result={result}
                inForce={result.typedResultId === current.typedResultInForce?.typedResultId}
                onDecide={() => setDeciding(result)}
              />
            ))}
          </ol>
        </>
      )}
      {typing ? <DialDialog current={current} onClose={() => setTyping(false)} /> : null}
      {deciding === null ? null : <DecideDialog result={deciding} onClose={() => setDeciding(null)} />}
    </>
  )
}

function TypedResultLine({
  result,
  inForce,
  onDecide,
}: {
  result: TypedResultSummary
  inForce: boolean
  onDecide(): void
}) {
  const { force, strength } = useQuantities()
  return (
    <li>
      <span>{result.brokenOn === null ? 'day not recorded' : calendarDayWords(result.brokenOn)}</span>
      <span className="numeric">{force.text(result.peakN)}</span>
      <span className="numeric">{strength.text(result.strengthMPa)}</span>
      <span className="numeric">
        {result.woodFailurePercent === null ? '' : `wood failure ${percentText(result.woodFailurePercent)}`}
      </span>
      <span className="break-line-tags">{inForce ? <strong className="tag">in force</strong> : null}</span>
      <span className="break-line-why">{typedSourceWords(result, force.text)}</span>
      {result.note === '' ? null : <span className="break-line-why">{result.note}</span>}
      {result.setAside === null ? null : <span className="break-line-why">{typedSetAsideWords(result.setAside)}</span>}
      <button type="button" className="button" onClick={onDecide}>
        {result.setAside === null ? 'Set aside' : 'Count again'}
      </button>
    </li>
  )
}

/** Sets a result without a curve aside, or lets it count again. */
function DecideDialog({ result, onClose }: { result: TypedResultSummary; onClose(): void }) {
  const decide = useAction('typedResults.decide')
  const [cause, setCause] = useState<TypedSetAsideCause>('other')
  const kind = result.setAside === null ? 'set-aside' : 'taken-back'
  return (
    <SignatureDialog
      title={kind === 'set-aside' ? 'Set the result aside' : 'Let the result count again'}
      explains="The decision is added to its history; nothing is deleted."
      button={kind === 'set-aside' ? 'Set aside' : 'Count again'}
      pending={decide.pending}
      error={decide.error}
      onSign={async (signature) =>
        signature !== null &&
        (await decide.run({
          ...{ typedResultId: result.typedResultId, kind, ...signature },
          cause: kind === 'set-aside' ? cause : null,
        })) !== null
      }
      onClose={onClose}
    >
      {kind === 'set-aside' ? <TypedAsideChoice of={result.source} cause={cause} onCause={setCause} /> : null}
    </SignatureDialog>
  )
}
