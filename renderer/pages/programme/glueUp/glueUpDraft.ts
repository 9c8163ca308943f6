// Held by tests/browser/programme/sessionRun.spec.ts.
import type { TypedTexts } from '../../../parts/forms/typedTexts.ts'
import type { CaliperCells } from './caliperCells.ts'
import type { GlueUpTexts } from './glueUpForm.ts'
import type { OwnBlockTexts } from './ownBlocks.ts'

const storageKey = 'breakledger.glue-up'

/** A glue-up that was begun and not stored: of which study and archive, which blocks, and all that was typed. */
export type GlueUpDraft = {
  archive: string
  studyId: number | null
  series: [key: string, count: string][]
  ages: (number | null)[] | null
  own: TypedTexts<OwnBlockTexts>
  texts: TypedTexts<GlueUpTexts>
  cells: CaliperCells
}

/** What was begun in this archive and neither stored nor thrown away; null: nothing. It outlives a crash of the program. */
export function keptDraft(archive: string): GlueUpDraft | null {
  const kept = localStorage.getItem(storageKey)
  if (kept === null) return null
  try {
    const draft = JSON.parse(kept) as GlueUpDraft
    return draft.archive === archive && Object.keys(draft.cells).length > 0 ? draft : null
  } catch {
    // Written by another version of the program: there is nothing to go on with
    return null
  }
}

/** Keeps what was typed until it is stored. */
export function keepDraft(draft: GlueUpDraft): void {
  localStorage.setItem(storageKey, JSON.stringify(draft))
}

/** It is stored, or thrown away. */
export function forgetDraft(): void {
  localStorage.removeItem(storageKey)
}
