import type { OverviewFilter, OverviewView } from '#contract/findings/overview.ts'
import { treatmentChoice } from '#words/findings/treatmentWords.ts'
import { typedFactor, typedLimit } from '../findingsQuestions.ts'
import { allTreatments } from '../torn/treatmentRows.ts'

/** How torn wood is treated in a table of means, as it is chosen: by the label of its choice. */
export const meanTreatments = allTreatments.map((one) => ({ ...one, label: treatmentChoice(one) }))

/** What is chosen on the page. Factors as texts of a list: '' is all. */
export type OverviewSettings = {
  view: 'blocks' | 'means'
  adhesive: string
  jointType: string
  gap: string
  exposure: string
  age: string
  /** Label of a choice. */
  treatment: string
  /** As typed. */
  limitPercent: string
  adjustFactor: string
  /** '': the mean itself. */
  reference: string
}

/** Nothing is chosen of any factor. */
export const allLevels = { adhesive: '', jointType: '', gap: '', exposure: '', age: '', reference: '' } as const

export const firstOverviewSettings: OverviewSettings = {
  ...allLevels,
  view: 'blocks',
  treatment: meanTreatments[0]!.label,
  limitPercent: '75',
  adjustFactor: '1',
}

/** A level of a factor that is a number, as a list names it. */
export function levelText(value: number | null): string {
  return value === null ? 'unknown' : String(value)
}

/** The level that such a text names. */
export function levelOf(text: string): number | null {
  return text === levelText(null) ? null : Number(text)
}

/** Which blocks are asked for. */
export function filterOf(studyId: number | null, settings: OverviewSettings): OverviewFilter {
  const named = (chosen: string) => (chosen === '' ? null : [chosen])
  const counted = (chosen: string) => (chosen === '' ? null : [levelOf(chosen)])
  return {
    studyId,
    adhesives: named(settings.adhesive),
    jointTypes: named(settings.jointType),
    bondLineGapsMm: counted(settings.gap),
    exposures: named(settings.exposure),
    agesMonths: counted(settings.age),
  }
}

/** What is shown of them. */
export function viewOf({ view, limitPercent, adjustFactor, reference, ...chosen }: OverviewSettings): OverviewView {
  if (view === 'blocks') return { kind: 'blocks' }
  const { woodFailure, distribution } = treatmentOfLabel(chosen.treatment)
  const numbers = { limitPercent: typedLimit(limitPercent) ?? 75, adjustFactor: typedFactor(adjustFactor) ?? 1 }
  const treatment = { woodFailure, ...numbers, distribution: distribution ?? 'normal' }
  return { kind: 'means', treatment, reference: reference === '' ? null : reference }
}

/** The choice that a label names; the first where none has it. */
export function treatmentOfLabel(label: string): (typeof meanTreatments)[number] {
  return meanTreatments.find((one) => one.label === label) ?? meanTreatments[0]!
}
