import { type GlueUpDraft, glueUpDraft } from '#contract/programme/glueUpDraft.ts'

const storageKey = 'breakledger.glue-up'

/** What was begun in this archive and neither stored nor thrown away; null: nothing. It outlives a crash of the program. */
export function keptDraft(archive: string): GlueUpDraft | null {
  return draftIn(localStorage.getItem(storageKey), archive)
}

/** `stored`: as it lies on this computer. null: nothing, or of another archive, or not a draft that this version can go on with. */
export function draftIn(stored: string | null, archive: string): GlueUpDraft | null {
  try {
    const { success, data } = glueUpDraft.safeParse(JSON.parse(stored ?? 'null'))
    return success && data.archive === archive && Object.keys(data.cells).length > 0 ? data : null
  } catch {
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
