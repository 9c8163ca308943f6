import { useState } from 'react'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { doneWords } from '#words/specimens/manyWords.ts'
import { countOf } from '#words/units/counts.ts'
import { writeCount } from '#words/units/numbers.ts'
import { useAction } from '../../../host/useAction.ts'
import { CatalogueField } from '../../../parts/catalogue/CatalogueField.tsx'
import { SignatureDialog } from '../../../parts/decisions/SignatureDialog.tsx'
import { TaskProgress } from '../../../parts/decisions/TaskProgress.tsx'
import type { PickedRows } from '../../../parts/lists/useRowSelection.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { WithdrawDialog } from './WithdrawDialog.tsx'

type Act = 'move' | 'withdrawn' | 'taken-back'

/** How many specimens are selected, and what can be done with all of them at once. */
export function SpecimenActs({ selection, total }: { selection: PickedRows<SpecimenSummary>; total: number }) {
  const { ids, rows, error } = selection
  const [act, setAct] = useState<Act | null>(null)
  const [done, setDone] = useState('')
  const close = (words: string | null) => {
    setAct(null)
    if (words !== null) setDone(words)
  }
  if (ids.length === 0) return <Notice trouble={error} />
  return (
    <section className="selection-bar" aria-label="Selected specimens">
      <Notice trouble={error} />
      <p aria-live="polite">
        <strong>{writeCount(ids.length)}</strong> selected{done === '' ? '' : `. ${done}`}
      </p>
      <button type="button" className="button button-quiet" onClick={rows.onNone}>
        Select none
      </button>
      {ids.length < total ? (
        <button type="button" className="button button-quiet" onClick={rows.onAll}>
          Select all {writeCount(total)} found
        </button>
      ) : null}
      <span className="selection-actions">
        <button type="button" className="button" onClick={() => setAct('move')}>
          Move
        </button>
        <button type="button" className="button" onClick={() => setAct('withdrawn')}>
          Withdraw
        </button>
        <button type="button" className="button" onClick={() => setAct('taken-back')}>
          Take back
        </button>
        <a className="button" href={hashOf({ page: 'labels' })}>
          Print labels
        </a>
      </span>
      {act === null ? null : act === 'move' ? (
        <MoveDialog specimenIds={ids} onClose={close} />
      ) : (
        <WithdrawDialog specimenIds={ids} kind={act} onClose={close} />
      )}
    </section>
  )
}

type DialogProps = { specimenIds: readonly number[]; onClose(done: string | null): void }

function MoveDialog({ specimenIds, onClose }: DialogProps) {
  const [place, setPlace] = useState('')
  const [missing, setMissing] = useState(false)
  const move = useAction('specimens.move')
  return (
    <SignatureDialog
      title={`Move ${countOf(specimenIds.length, 'specimen')}`}
      explains="Each gets a new version with its place; the places before stay in its history."
      button="Move"
      whyLabel="Why they are moved"
      pending={move.pending}
      error={move.error}
      onSign={async (signature) => {
        setMissing(place.trim() === '')
        if (signature === null || place.trim() === '') return false
        const moved = await move.run({ specimenIds: [...specimenIds], place, ...signature })
        if (moved === null) return false
        onClose(doneWords('move', moved, specimenIds.length))
        return true
      }}
      onClose={() => onClose(null)}
    >
      <CatalogueField
        kind="place"
        label="Place on the shelf"
        required
        value={place}
        error={missing ? 'Say where they are put.' : null}
        onValue={setPlace}
      />
      {move.pending ? <TaskProgress task="specimens" label="Specimens moved" /> : null}
    </SignatureDialog>
  )
}
