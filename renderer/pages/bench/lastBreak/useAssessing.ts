// Held by tests/browser/lastBreakRun.spec.ts.
import { type RefObject, useCallback, useEffect, useReducer, useRef } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { useAction } from '../../../host/useAction.ts'
import { useSigner } from '../../../parts/decisions/signer.ts'
import { watchUnsaved } from '../../../widgets/forms/unsaved.ts'
import { type AssessmentDraft, changeDraft, type DraftChange } from './assessmentDraft.ts'
import { useShownBreak } from './useShownBreak.ts'

/** So long after a key or a click the person is still at that break, ms. */
const stillWritingMs = 2000

/** The break that the panel is about, and what is being written of its faces. */
export type Assessing = {
  summary: BreakSummary
  draft: AssessmentDraft | null
  change(what: DraftChange): void
  save(): void
  /** Something was begun for this break that is not finished. */
  isBusy(): boolean
  pending: boolean
  error: TroubleMessage | null
  dismiss(): void
}

/** Keeps what is written with the break for which it was begun: the next one is shown only when that is finished. */
export function useAssessing(
  newest: BreakSummary,
  panel: RefObject<HTMLElement | null>,
  isSigning: boolean,
): Assessing {
  const signer = useSigner()
  const [draft, dispatch] = useReducer(changeDraft, null)
  const { run, pending, error, dismiss } = useAction('breaks.assess')
  const touchedAt = useRef(Number.NEGATIVE_INFINITY)
  const isBusy = useCallback(
    () =>
      isSigning ||
      panel.current?.querySelector('textarea') === document.activeElement ||
      performance.now() - touchedAt.current < stillWritingMs,
    [isSigning, panel],
  )
  const summary = useShownBreak(newest, isBusy)

  async function save(what: AssessmentDraft): Promise<void> {
    if (!what.changed) return
    dispatch({ kind: 'saving' })
    const record = await run({
      breakId: what.breakId,
      woodFailurePercent: what.woodFailure.percent,
      failurePattern: what.failurePattern,
      note: what.note.trim(),
      by: signer,
    })
    if (record === null) dispatch({ kind: 'not-saved' })
  }
  useKeptDraft(summary, draft, dispatch, (unsaved) => void save(unsaved))

  return {
    ...{ summary, draft, isBusy, pending, error, dismiss },
    change(what) {
      touchedAt.current = performance.now()
      dispatch(what)
    },
    save: () => void (draft !== null && save(draft)),
  }
}

/** Starts a draft for each break; what was typed for the one before and not saved is saved then. */
function useKeptDraft(
  summary: BreakSummary,
  draft: AssessmentDraft | null,
  dispatch: (change: DraftChange) => void,
  saveUnsaved: (draft: AssessmentDraft) => void,
): void {
  const latest = useRef({ draft, saveUnsaved })
  latest.current = { draft, saveUnsaved }
  useEffect(() => {
    const { draft: before, saveUnsaved: save } = latest.current
    if (before?.changed && before.breakId !== summary.breakId) save(before)
    dispatch({ kind: 'stored', summary })
  }, [summary, dispatch])
  // It is saved when the page is left, but not when the window closes
  useEffect(
    () =>
      watchUnsaved({ place: () => null, isUnsaved: () => latest.current.draft?.changed === true, keptOnLeaving: true }),
    [],
  )
  useEffect(
    () => () => {
      const { draft: left, saveUnsaved: save } = latest.current
      if (left?.changed) save(left)
    },
    [],
  )
}
