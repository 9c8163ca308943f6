import { useRef, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { resultInForce } from '#domain/strength/resultInForce.ts'
import { setAsideWords } from '#words/breaks/decisionWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { pictureName, readingWords } from '#words/specimens/pictureWords.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { AssessDialog } from '../../../parts/decisions/AssessDialog.tsx'
import { ReassignDialog } from '../../../parts/decisions/ReassignDialog.tsx'
import { SetAsideDialog, TakeBackDialog } from '../../../parts/decisions/StandingDialogs.tsx'
import { PicturesSection } from '../../../parts/pictures/PicturesSection.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { BreakColumns } from './BreakColumns.tsx'
import { BreakHead } from './BreakHead.tsx'
import { BreakPictureDialog } from './BreakPictureDialog.tsx'
import { type BreakDialog, decidesOfCurve } from './breakDialog.ts'
import { EvaluationsTable } from './EvaluationsTable.tsx'
import { PeakAsFoundDialog, PrematureDialog } from './overrule/OverruleDialogs.tsx'
import { PickPeakDialog } from './overrule/PickPeakDialog.tsx'
import { ResultStrip } from './ResultStrip.tsx'
import { ReviewedCurve } from './reviewed/ReviewedCurve.tsx'
import './break.css'

/** One break: its curve and what the program saw on it, what was made of it, how far to trust it, and what people said. */
export function BreakPage({ breakId }: { breakId: number }) {
  const answer = useAnswer('breaks.get', { breakId })
  if (answer.value === null)
    return (
      <div className="record-page">
        <Notice trouble={answer.error} />
        {answer.pending ? <p className="quiet">Fetching the record …</p> : null}
      </div>
    )
  return <BreakView record={answer.value} />
}

function BreakView({ record }: { record: BreakRecord }) {
  const { summary } = record
  const [dialog, setDialog] = useState<BreakDialog | null>(null)
  const keptS = useRef<number | null>(null)
  const close = () => setDialog(null)
  const inForce = resultInForce(record)
  const loaded = inForce !== null && inForce.result.outcome !== 'none'
  return (
    <div className="record-page">
      <BreakHead summary={summary} evaluated={inForce !== null} onAsk={setDialog} />
      <Notice trouble={unreadableTrouble(record.unreadable)} />
      {summary.setAside === null ? null : (
        <p className="set-aside-words">
          <strong>Set aside, not used in results:</strong> {setAsideWords(summary)}
        </p>
      )}
      <ResultStrip
        record={record}
        onAsk={(asked) => setDialog(asked.kind === 'pick' ? { kind: 'pick', timeS: keptS.current } : asked)}
      />
      <ReviewedCurve
        record={record}
        inSight={dialog !== null && decidesOfCurve.includes(dialog.kind)}
        onKept={(timeS) => {
          keptS.current = timeS
        }}
        {...(loaded ? { onPick: (timeS: number) => setDialog({ kind: 'pick', timeS }) } : {})}
      />
      {record.evaluations.length > 1 ? (
        <section className="evaluations" aria-labelledby="evaluations-title">
          <h2 id="evaluations-title">All results of this break</h2>
          <EvaluationsTable record={record} />
        </section>
      ) : null}
      <PicturesSection
        owner={{ specimenId: null, breakId: summary.breakId }}
        hint="Both faces, held straight, without glare."
        openName={(attachment) => `Wood failure from ${pictureName(attachment)}`}
        below={({ readings }) => <p className="quiet">{readingWords(readings)}</p>}
        onOpen={(picture) => setDialog({ kind: 'picture', picture })}
      />
      <BreakColumns record={record} />
      {dialog === null ? null : <DialogOf dialog={dialog} record={record} onAsk={setDialog} onClose={close} />}
    </div>
  )
}

function DialogOf({
  dialog,
  record,
  onAsk,
  onClose,
}: {
  dialog: BreakDialog
  record: BreakRecord
  onAsk(dialog: BreakDialog): void
  onClose(): void
}) {
  const { summary } = record
  switch (dialog.kind) {
    case 'set-aside':
      return <SetAsideDialog summary={summary} onClose={onClose} />
    case 'take-back':
      return <TakeBackDialog summary={summary} onClose={onClose} />
    case 'reassign':
      return <ReassignDialog summary={summary} onClose={onClose} />
    case 'assess':
      return <AssessDialog summary={summary} decidedPercent={dialog.decidedPercent ?? null} onClose={onClose} />
    case 'picture':
      return (
        <BreakPictureDialog
          summary={summary}
          picture={dialog.picture}
          onDecided={(decidedPercent) => onAsk({ kind: 'assess', decidedPercent })}
          onClose={onClose}
        />
      )
    case 'pick':
      return <PickPeakDialog record={record} startTimeS={dialog.timeS} onClose={onClose} />
    case 'premature':
      return <PrematureDialog record={record} onClose={onClose} />
    case 'as-found':
      return <PeakAsFoundDialog record={record} onClose={onClose} />
  }
}
