import { type Ref, useEffect, useImperativeHandle, useReducer, useRef, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { overruledWords, setAsideWords } from '#words/breaks/decisionWords.ts'
import { flagWords, verifiedRangeFlags } from '#words/breaks/flagWords.ts'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'
import { type SamplingBound, samplingBoundWords } from '#words/breaks/samplingBoundWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { asSentence } from '#words/sentence.ts'
import { useAction } from '../../../host/useAction.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { FailurePatternChoice } from '../../../parts/assessment/FailurePatternChoice.tsx'
import { WoodFailure } from '../../../parts/assessment/WoodFailure.tsx'
import { enterKey } from '../../../parts/assessment/woodFailureEntry.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { SetAsideDialog, TakeBackDialog } from '../../../parts/decisions/StandingDialogs.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { VerificationWords } from '../../../parts/VerificationWords.tsx'
import { hashOf } from '../../../routes/route.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { type AssessmentDraft, changeDraft, type DraftChange } from './assessmentDraft.ts'
import './lastBreak.css'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'
import { useSigner } from '../../../parts/decisions/signer.ts'

/** What the bench's keys ask of the panel. */
export type LastBreakKeys = { key(name: string): boolean }

/** The break that just happened: what it gave, how far to trust it, and what the faces look like. */
export function LastBreak({ summary, keys }: { summary: BreakSummary; keys: Ref<LastBreakKeys> }) {
  const signer = useSigner()
  const [draft, dispatch] = useReducer(changeDraft, null)
  const [signing, setSigning] = useState<'set-aside' | 'take-back' | null>(null)
  const assess = useAction('breaks.assess')
  const panel = useRef<HTMLElement>(null)

  useKeptDraft(summary, draft, dispatch, (unsaved) => void save(unsaved))

  async function save(what: AssessmentDraft): Promise<void> {
    if (!what.changed) return
    dispatch({ kind: 'saving' })
    const record = await assess.run({
      breakId: what.breakId,
      woodFailurePercent: what.woodFailure.percent,
      failurePattern: what.failurePattern,
      note: what.note.trim(),
      by: signer,
    })
    if (record === null) dispatch({ kind: 'not-saved' })
  }

  useImperativeHandle(keys, () => ({
    key(name) {
      if (draft === null || signing !== null) return false
      const focus = (selector: string) => {
        panel.current?.querySelector<HTMLElement>(selector)?.focus()
        return true
      }
      if (name === 'Enter') void save(draft)
      else if (name === 'x' || name === 'X') setSigning(summary.setAside === null ? 'set-aside' : 'take-back')
      else if (name === 'c' || name === 'C') go({ page: 'break', breakId: summary.breakId })
      else if (name === 'f' || name === 'F') return focus('[data-pattern]:checked, [data-pattern]')
      else if (name === 'o' || name === 'O') return focus('textarea')
      else if (/^\d$|^Arrow(Up|Down)$/.test(name)) {
        const entry = enterKey(draft.woodFailure, name, performance.now())
        if (entry === null) return false
        dispatch({ kind: 'wood-failure', entry })
      } else return false
      return true
    },
  }))

  if (draft === null) return null
  return (
    <section className="last-break" aria-labelledby="last-break-title" ref={panel}>
      <div className="last-break-head">
        <h2 id="last-break-title">
          {summary.outcome === 'break' ? 'Last break' : 'Last recording'}{' '}
          <span className="last-break-number">{summary.number ?? 'no specimen'}</span>
          {isUncalibrated(summary.scaleKind) ? (
            <span className="tag">{summary.scaleKind === 'none' ? 'no scale' : 'uncalibrated'}</span>
          ) : null}
        </h2>
        <a href={hashOf({ page: 'break', breakId: summary.breakId })}>
          Curve <Keys keys="C" />
        </a>
      </div>
      <Result summary={summary} />
      {summary.setAside === null ? null : (
        <p className="set-aside-words">
          <strong>Set aside:</strong> {setAsideWords(summary)}
        </p>
      )}
      <WoodFailure entry={draft.woodFailure} onEntry={(entry) => dispatch({ kind: 'wood-failure', entry })} />
      <FailurePatternChoice
        value={draft.failurePattern}
        onChange={(pattern) => dispatch({ kind: 'pattern', pattern })}
      />
      <NoteLine note={draft.note} onNote={(note) => dispatch({ kind: 'note', note })} onSave={() => void save(draft)} />
      <Notice trouble={assess.error} onDismiss={assess.dismiss} />
      <div className="last-break-buttons">
        <button type="button" className="button button-primary" onClick={() => void save(draft)}>
          Save <Keys keys="Enter" />
        </button>
        <p className="last-break-saved" aria-live="polite">
          {assess.pending ? 'Saving …' : draft.changed ? 'Not saved yet' : draft.saved ? 'Saved' : ''}
        </p>
        <button
          type="button"
          className="button button-quiet"
          onClick={() => setSigning(summary.setAside === null ? 'set-aside' : 'take-back')}
        >
          {summary.setAside === null ? 'Set aside' : 'Take back'} <Keys keys="X" />
        </button>
      </div>
      <SignedBy />
      {signing === 'set-aside' ? <SetAsideDialog summary={summary} onClose={() => setSigning(null)} /> : null}
      {signing === 'take-back' ? <TakeBackDialog summary={summary} onClose={() => setSigning(null)} /> : null}
    </section>
  )
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
  useEffect(
    () => () => {
      const { draft: left, saveUnsaved: save } = latest.current
      if (left?.changed) save(left)
    },
    [],
  )
}

function Result({ summary }: { summary: BreakSummary }) {
  const { force, strength } = useQuantities()
  const { verification, strengthMPa } = summary
  const flags = summary.flags.filter(
    (flag) => flag !== 'uncalibrated' && (verification === null || !verifiedRangeFlags.includes(flag)),
  )
  return (
    <>
      <dl className="last-break-figures">
        <div>
          <dt>{summary.outcome === 'break' ? 'Peak load' : 'Highest load'}</dt>
          <dd>
            {force.number(summary.peakN)} <small>{force.unit}</small>
            <OverruledMark overruled={summary.overruled} />
          </dd>
        </div>
        <div>
          <dt>Shear strength</dt>
          <dd>
            {strengthMPa === null ? (
              <span className="last-break-none">{summary.outcome === 'break' ? 'area unknown' : 'none'}</span>
            ) : (
              <>
                {strength.number(strengthMPa)} <small>{strength.unit}</small>
              </>
            )}
          </dd>
        </div>
      </dl>
      {summary.outcome === 'break' ? null : (
        <p className="last-break-words">It was {outcomeWord(summary)} and has no strength.</p>
      )}
      {summary.outcome === 'break' ? (
        <p className="last-break-words">
          {asSentence(
            summary.overruled === null
              ? samplingBoundWords(boundOf(summary), force)
              : overruledWords(summary.overruled),
          )}
        </p>
      ) : null}
      {verification === null ? null : <VerificationWords verification={verification} />}
      {flags.length === 0 ? null : (
        <ul className="flag-list">
          {flags.map((flag) => (
            <li key={flag}>{flagWords[flag]}</li>
          ))}
        </ul>
      )}
    </>
  )
}

function boundOf({ samplingBoundPercent: percent, peakN }: BreakSummary): SamplingBound {
  return { boundN: percent === null || peakN === null ? null : (percent / 100) * peakN, percent }
}

function NoteLine({ note, onNote, onSave }: { note: string; onNote(note: string): void; onSave(): void }) {
  return (
    <label className="note-line">
      <span>
        Note <Keys keys="O" />
      </span>
      <textarea
        rows={1}
        maxLength={4000}
        value={note}
        placeholder="What the broken faces look like"
        onChange={(event) => onNote(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') event.currentTarget.blur()
          if (event.key !== 'Enter' || event.shiftKey) return
          event.preventDefault()
          onSave()
          event.currentTarget.blur()
        }}
      />
    </label>
  )
}
