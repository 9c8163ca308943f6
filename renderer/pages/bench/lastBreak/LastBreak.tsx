import { type Ref, useImperativeHandle, useRef, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { overruledWords, setAsideWords } from '#words/breaks/decisionWords.ts'
import { flagWords, verifiedRangeFlags } from '#words/breaks/flagWords.ts'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'
import { type SamplingBound, samplingBoundWords } from '#words/breaks/samplingBoundWords.ts'
import { isUncalibrated } from '#words/calibration/scaleWords.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { asSentence } from '#words/sentence.ts'
import { severalResultsWords } from '#words/specimens/resultsWords.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { FailurePatternChoice } from '../../../parts/assessment/FailurePatternChoice.tsx'
import { WoodFailure } from '../../../parts/assessment/WoodFailure.tsx'
import { enterKey } from '../../../parts/assessment/woodFailureEntry.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { SetAsideDialog, TakeBackDialog } from '../../../parts/decisions/StandingDialogs.tsx'
import { go } from '../../../parts/routing/useRoute.ts'
import { StrengthQuestion } from '../../../parts/StrengthQuestion.tsx'
import { VerificationWords } from '../../../parts/VerificationWords.tsx'
import { hashOf } from '../../../routes/route.ts'
import { focusSection } from '../../../widgets/focus/focusPlaces.ts'
import { Keys } from '../../../widgets/Keys.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { useAssessing } from './useAssessing.ts'
import './lastBreak.css'
import { SignedBy } from '../../../parts/decisions/SignedBy.tsx'

/** What the bench's keys ask of the panel. */
export type LastBreakKeys = { key(name: string): boolean }

/** The break that just happened: what it gave, how far to trust it, and what the faces look like. */
export function LastBreak({
  newest,
  isStoring,
  keys,
}: {
  newest: BreakSummary
  /** A capture has ended since, whose record is not there yet. */
  isStoring: boolean
  keys: Ref<LastBreakKeys>
}) {
  const [signing, setSigning] = useState<'set-aside' | 'take-back' | null>(null)
  const panel = useRef<HTMLElement>(null)
  const assessing = useAssessing(newest, panel, signing !== null)
  const { summary, draft, change, save, isBusy } = assessing

  useImperativeHandle(keys, () => ({
    key(name) {
      if (draft === null || signing !== null) return false
      // Who has just seen a joint break types for that one, and its record comes in a moment.
      if (isStoring && !isBusy()) return false
      const focus = (selector: string) => {
        panel.current?.querySelector<HTMLElement>(selector)?.focus()
        return true
      }
      if (name === 'Enter') save()
      else if (name === 'x' || name === 'X') setSigning(summary.setAside === null ? 'set-aside' : 'take-back')
      else if (name === 'c' || name === 'C') go({ page: 'break', breakId: summary.breakId })
      else if (name === 'f' || name === 'F') return focus('[data-pattern]:checked, [data-pattern]')
      else if (name === 'o' || name === 'O') return focus('textarea')
      else if (/^\d$|^Arrow(Up|Down)$/.test(name)) {
        const entry = enterKey(draft.woodFailure, name, performance.now())
        if (entry === null) return false
        change({ kind: 'wood-failure', entry })
      } else return false
      return true
    },
  }))

  if (draft === null) return null
  return (
    <section className="last-break" aria-labelledby="last-break-title" ref={panel}>
      <Head summary={summary} isNewest={summary.breakId === newest.breakId} isStoring={isStoring} />
      <Result summary={summary} />
      {summary.setAside === null ? null : (
        <p className="set-aside-words">
          <strong>Set aside:</strong> {setAsideWords(summary)}
        </p>
      )}
      <WoodFailure entry={draft.woodFailure} onEntry={(entry) => change({ kind: 'wood-failure', entry })} />
      <FailurePatternChoice value={draft.failurePattern} onChange={(pattern) => change({ kind: 'pattern', pattern })} />
      <NoteLine note={draft.note} onNote={(note) => change({ kind: 'note', note })} onSave={save} />
      <Notice trouble={assessing.error} onDismiss={assessing.dismiss} />
      <div className="last-break-buttons">
        <button type="button" className="button button-primary" onClick={save}>
          Save <Keys keys="Enter" />
        </button>
        <p className="last-break-saved" aria-live="polite">
          {assessing.pending ? 'Saving …' : draft.changed ? 'Not saved yet' : draft.saved ? 'Saved' : ''}
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

/** Which break the panel is about, and that another is on its way. */
function Head({ summary, isNewest, isStoring }: { summary: BreakSummary; isNewest: boolean; isStoring: boolean }) {
  return (
    <>
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
      {isStoring ? (
        <p className="last-break-words" role="status">
          Storing the next result …
        </p>
      ) : null}
      {isNewest ? null : (
        <p className="last-break-words" role="status">
          The next result is stored. It is shown when you have finished this one: save with Enter.
        </p>
      )}
    </>
  )
}

function Result({ summary }: { summary: BreakSummary }) {
  const { force, strength } = useQuantities()
  const { verification, strengthMPa } = summary
  const several = severalResultsWords(summary.resultsOfSpecimen)
  const flags = summary.flags.filter(
    (flag) => flag !== 'uncalibrated' && (verification === null || !verifiedRangeFlags.includes(flag)),
  )
  return (
    <>
      <dl className="last-break-figures">
        <div>
          <dt>
            {summary.outcome === 'break' ? 'Peak load' : 'Highest load'}{' '}
            {isSimulated(summary) ? <span className="tag">{simulatedMark}</span> : null}
          </dt>
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
      <StrengthQuestion strengthMPa={strengthMPa} />
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
      {flags.length === 0 && several === null ? null : (
        <ul className="flag-list">
          {several === null ? null : <li>{several}</li>}
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
          if (event.key === 'Escape') focusSection(event.currentTarget)
          if (event.key !== 'Enter' || event.shiftKey) return
          event.preventDefault()
          onSave()
          focusSection(event.currentTarget)
        }}
      />
    </label>
  )
}
