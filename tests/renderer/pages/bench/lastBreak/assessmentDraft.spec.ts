import { describe, expect, it } from 'vitest'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { changeDraft } from '#renderer/pages/bench/lastBreak/assessmentDraft.ts'
import { emptyEntry } from '#renderer/parts/assessment/woodFailureEntry.ts'
import { createScriptedHost } from '#tests/fakes/scripted/scriptedHost.ts'

const host = createScriptedHost()
const first = host.addBreak(4000)
const second = host.addBreak(5000)
const stored = (summary: BreakSummary) => ({ kind: 'stored', summary }) as const

describe('changeDraft', () => {
  it('begins empty and unchanged for a new break', () => {
    expect(changeDraft(null, stored(first))).toMatchObject({
      breakId: first.breakId,
      changed: false,
      saved: false,
      note: '',
    })
  })

  it('keeps what is being typed when the record of the same break changes', () => {
    const typing = changeDraft(changeDraft(null, stored(first)), { kind: 'note', note: 'clean' })
    expect(changeDraft(typing, stored({ ...first, setAside: 'slipped' }))).toMatchObject({
      note: 'clean',
      changed: true,
    })
  })

  it('takes over what was stored once nothing is unsaved', () => {
    const draft = changeDraft(null, stored(first))
    expect(changeDraft(draft, stored({ ...first, woodFailurePercent: 40 }))).toMatchObject({
      woodFailure: { percent: 40 },
      changed: false,
      saved: true,
    })
  })

  it('is unsaved again when saving failed, and saved when it did not', () => {
    const entry = { ...emptyEntry, percent: 75 }
    const typed = changeDraft(changeDraft(null, stored(first)), { kind: 'wood-failure', entry })
    const saving = changeDraft(typed, { kind: 'saving' })
    expect(saving).toMatchObject({ changed: false, saved: true })
    expect(changeDraft(saving, { kind: 'not-saved' })).toMatchObject({ changed: true, woodFailure: { percent: 75 } })
  })

  it('begins anew for the next break', () => {
    const typing = changeDraft(changeDraft(null, stored(first)), { kind: 'pattern', pattern: 'CF' })
    expect(changeDraft(typing, stored(second))).toMatchObject({ breakId: second.breakId, failurePattern: null })
  })
})
