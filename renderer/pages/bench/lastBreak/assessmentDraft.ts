import type { FailurePattern } from '#contract/breaks/assessment.ts'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { emptyEntry, type WoodFailureEntry } from '../../../parts/assessment/woodFailureEntry.ts'

/** What the person is writing about the faces of one break, before it is saved. */
export type AssessmentDraft = {
  breakId: number
  woodFailure: WoodFailureEntry
  failurePattern: FailurePattern | null
  note: string
  /** False when it says no more than what is stored. */
  changed: boolean
  /** True when the person has saved something of this break. */
  saved: boolean
}

export type DraftChange =
  | { kind: 'wood-failure'; entry: WoodFailureEntry }
  | { kind: 'pattern'; pattern: FailurePattern | null }
  | { kind: 'note'; note: string }
  /** The record changed, for whatever reason. */
  | { kind: 'stored'; summary: BreakSummary }
  /** The draft is on its way to the archive ... */
  | { kind: 'saving' }
  /** ... and did not get there. */
  | { kind: 'not-saved' }

/** A draft that says what is stored of a break. */
export function draftOf(summary: BreakSummary): AssessmentDraft {
  return {
    breakId: summary.breakId,
    woodFailure: { ...emptyEntry, percent: summary.woodFailurePercent },
    failurePattern: summary.failurePattern,
    note: summary.note,
    changed: false,
    saved: summary.woodFailurePercent !== null || summary.failurePattern !== null || summary.note !== '',
  }
}

/**
 * The draft after a change. A stored assessment replaces the draft of the same break only when nothing was changed since, so
 * that what the person is typing is never lost; another break always begins a new draft.
 */
export function changeDraft(draft: AssessmentDraft | null, change: DraftChange): AssessmentDraft | null {
  if (change.kind === 'stored')
    return draft?.changed && draft.breakId === change.summary.breakId ? draft : draftOf(change.summary)
  if (draft === null) return null
  if (change.kind === 'saving') return { ...draft, changed: false, saved: true }
  if (change.kind === 'not-saved') return { ...draft, changed: true }
  if (change.kind === 'wood-failure') return { ...draft, woodFailure: change.entry, changed: true }
  if (change.kind === 'pattern') return { ...draft, failurePattern: change.pattern, changed: true }
  return { ...draft, note: change.note, changed: true }
}
